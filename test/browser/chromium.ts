import { type Browser, chromium } from 'playwright-core'
import { findTestBrowser } from '../../scripts/browser.mjs'

/**
 * What the browser leaves out. Two are ours: with the first page of each visitor it would make two more pages for what
 * falls from its address bar, which cost as much as ours. The others are those that Playwright (1.65) leaves out: only
 * the last list on a command line counts.
 */
const LEFT_OUT = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
]

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  `--disable-features=${LEFT_OUT.join(',')}`,
]

/** The Chromium that is here, as fast as it goes without a screen; `executablePath` where it must be another. */
export function launchChromium(
  flags: readonly string[] = [],
  executablePath = findTestBrowser(),
): Promise<Browser> {
  if (!executablePath) throw new Error('no Chromium here: `npm test` finds or installs one')
  return chromium.launch({ executablePath, headless: true, args: [...FLAGS, ...flags] })
}
