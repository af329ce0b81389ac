import type { Block } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import type { PaperSource } from '../paper-source'
import type { WaysOnPaper } from '../ways-on-paper'
import { mapWithWords } from './map-with-words'

/** Ways that a line could take with the ground in which they lie, and below them what each comes to. */
export const waysMap = (source: PaperSource, ways: WaysOnPaper, room: SheetRoom): readonly Block[] =>
  mapWithWords(source, room, [...ways.corridor.flat(2), ...ways.all.flat()], {
    ...{ ways, sentences: ways.sentences, id: 'ways' },
  })
