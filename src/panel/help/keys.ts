/** Every key, as the person finds it: what is pressed, and what it does. One letter, digit or sign alone can be turned off. */
export const KEYS: readonly {
  readonly where: string
  readonly keys: readonly (readonly [press: string, does: string])[]
}[] = [
  {
    where: 'Anywhere',
    keys: [
      ['1, 2, 3, 4, 5', 'take the tool Select, Station, Line, Hazard or Measure'],
      ['?', 'this help'],
      ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
      ['Escape', 'close what is open, or put back what is being typed'],
    ],
  },
  {
    where: 'On the map',
    keys: [
      ['arrows', 'move the crosshair; with Shift faster'],
      ['Enter or space', 'do what a click at the crosshair does'],
      ['Tab', 'go from station to station; Escape, then Tab, leaves the map'],
      ['M, or Alt with arrows', 'move what is selected; Enter keeps it, Escape puts it back'],
      ['S, O, B, W', 'lay what is picked, or the next leg, on the surface, overhead, buried or under water'],
      ['F2', 'rename'],
      ['Delete', 'remove what is selected; on a line under way, take the last bend back'],
      ['menu key, or Shift F10', 'what can be done here'],
      ['+ and −', 'come nearer, go farther'],
    ],
  },
  {
    where: 'On a phone',
    keys: [
      ['a long press on the map', 'what can be done here'],
      ['the grip of the panel', 'pull it, or tap it, for more or less of it'],
    ],
  },
]
