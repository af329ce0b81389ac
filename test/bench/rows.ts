import { growthWithLines, ringOnTree, speechOnTree } from './tree-solve'

export const rows = [speechOnTree, ringOnTree, growthWithLines]
