import { execFileSync } from 'node:child_process'
import { copyFileSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { freePort } from '../../scripts/share/nats-server.mjs'
import { box, camp, endAll, ends, folderOf, hand, nats, numbers, streamAt, together } from './trial-box'

const isTried = nats && process.env.BOX_TRIALS === '1' && process.getuid?.() === 0

afterEach(endAll)

/** Mounts a disk that is a file: what the system has not written out yet is not in the file, as it is not on a disk whose power is cut. */
function mounted(image: string, folder: string): string {
  mkdirSync(folder)
  execFileSync('mount', ['-o', 'loop', image, folder])
  ends.push(() => execFileSync('umount', ['-l', folder]))
  return folder
}

test.skipIf(!isTried)(
  'a camp whose power is cut loses no more than its last moments, and has them again from whoever has them',
  async () => {
    const [place, port] = [folderOf(), await freePort()]
    const [disk, left] = ['disk', 'left'].map((name) => join(place, `${name}.img`)) as [string, string]
    execFileSync('truncate', ['-s', '64M', disk])
    execFileSync('mkfs.ext4', ['-q', disk])
    const base = await box()
    const before = await camp(base.port, { folder: mounted(disk, join(place, 'disk')), port })
    const one = await hand(base.port)
    const two = await hand(port, one.fragment)
    const working = [one.edit(0, 50, 100), two.edit(50, 50, 100)]
    await new Promise((done) => setTimeout(done, 4000))
    process.kill(before.natsPid()!, 'SIGSTOP')
    const cutMs = Date.now()
    copyFileSync(disk, left)
    process.kill(before.natsPid()!, 'SIGCONT')
    const had = await streamAt(before.natsPort, one.fragment)
    await before.stop()
    const after = await camp(base.port, { folder: mounted(left, join(place, 'left')), port, base: [] })
    const has = await streamAt(after.natsPort, one.fragment)
    const lost = had.times.slice(has.envelopes).filter((time) => time <= cutMs)
    const oldestMs = cutMs - Math.min(cutMs, ...lost)
    console.log(`power cut: ${lost.length} envelopes lost, the oldest ${oldestMs} ms before`)
    expect(oldestMs).toBeLessThan(2500)
    await after.stop()
    await camp(base.port, { folder: join(place, 'left'), port })
    const made = numbers((await Promise.all(working)).flatMap((each) => each.made))
    expect(numbers((await together(one, two)).state.marks)).toEqual(made)
    const three = await hand(port, one.fragment)
    expect(numbers((await together(one, three)).state.marks)).toEqual(made)
  },
  180_000,
)
