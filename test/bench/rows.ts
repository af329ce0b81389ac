import { groundOfLongNet, routeBesideOthers, routeOverMillion } from './ground-work'
import { growthWithLines, ringOnTree, speechOnTree } from './tree-solve'
import { demoReport, oneBendMoved } from './whole-report'

export const rows = [
  speechOnTree,
  ringOnTree,
  growthWithLines,
  ...oneBendMoved,
  demoReport,
  routeOverMillion,
  routeBesideOthers,
  groundOfLongNet,
]
