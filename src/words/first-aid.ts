/**
 * What to try when a line is dead, at its end and with no other tool than the set, in the order in which it costs least.
 *
 * Source: an open turns freely, a short turns stiffly, the set before the line: US Army subcourse SS0440, p. 2-12 and 2-13, and SS0437, p. 3;
 * the rest is common practice.
 */
export const FIRST_AID: readonly string[] = [
  'Set: posts tight, no bare wires touching, fresh cells, handset on its hook.',
  'Take the line off. Still dead: set or cells. Set well: the line.',
  'Crank turns freely: a wire is broken or off. Crank turns stiffly: wires touch.',
  'Hum or weak speech: a wire on the ground. Strange voices: another line.',
  'Loop well under the figure above: a short on the way. No reading: a break.',
  'Then halve the line at its middle tag, and again. No cranking while hands are on bare ends. Off the line before thunder.',
]
