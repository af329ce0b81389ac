import { corridorOfRoute, shadesAboutStation } from './far-and-near'
import { faultOfDemo } from './fault-answer'
import { groundOfLongNet, routeBesideOthers, routeOverMillion } from './ground-work'
import { oddsOfParty } from './odds'
import { drags, firstScreen, heapAfterEdits, heapAfterPlans, openThousand, papersOfSixty } from './on-screen'
import { shelfNets } from './shelf-nets'
import { growthWithLines, ringOnTree, speechOnTree } from './tree-solve'
import { demoReport, oneBendMoved } from './whole-report'

export { closeSite } from './browser-page'

/** The rows by the names that `npm run bench -- NAME` takes. */
export const rows = {
  solver: [speechOnTree, ringOnTree, growthWithLines, oddsOfParty],
  report: [demoReport, ...oneBendMoved],
  ground: [routeOverMillion, routeBesideOthers, groundOfLongNet],
  drag: drags,
  opening: [openThousand, firstScreen],
  heap: [heapAfterEdits, heapAfterPlans],
  papers: [papersOfSixty],
  shelf: shelfNets,
  fault: [faultOfDemo],
  far: [shadesAboutStation, corridorOfRoute],
}
