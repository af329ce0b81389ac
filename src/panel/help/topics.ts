/** What the questions mean that a person has, in plain words. */
export const TOPICS: readonly { readonly ask: string; readonly answer: readonly string[] }[] = [
  {
    ask: 'How do I draw a net?',
    answer: [
      'Take the tool Line, click where the first telephone stands, then the bends of the way, then where the second stands, and press Done. Stations come with the line.',
      'Every click more adds a telephone to the same net. A click on a wire joins it there.',
    ],
  },
  {
    ask: 'What do works, thin and fails mean?',
    answer: [
      'Works: every call rings and is heard, with room to spare. Thin: it does, but with so little to spare that a bad splice or an old battery can end it. Fails: at least one call does not ring, is not heard or has too little current.',
      'Not finished: something is still missing, and the card says what. The second line of each circuit says the same for the worst weather: wet line, old battery, hot or cold wire.',
    ],
  },
  {
    ask: 'Will it ring?',
    answer: [
      'A bell needs a least voltage. The longer and thinner the wire, the wetter the line and the more bells on it, the less arrives. Each row gives what arrives, and what the bell needs.',
    ],
  },
  {
    ask: 'Will it talk?',
    answer: [
      'Speech loses strength on the way, told in decibels: every 3 dB halve its power. Around 30 dB two people still understand each other in a quiet place; the card gives the limit that it reckons with.',
    ],
  },
  {
    ask: 'What would mend it?',
    answer: [
      'Each change listed was tried on your plan: it works with it. Press Apply, and undo it if you think again.',
    ],
  },
  {
    ask: 'Where do the figures come from?',
    answer: [
      'Under each wire, telephone and supply the panel lists its figures with the book, data sheet or habit that they come from, and how far real ones lie from them. What is from memory says so.',
    ],
  },
  {
    ask: 'Where is my plan kept?',
    answer: [
      'In this browser, on this machine, within a second of each change. Nothing is sent anywhere. Save it as a file to take it along or to be safe: Plans, Save as a file.',
    ],
  },
  {
    ask: 'How do I give a place?',
    answer: [
      'Any usual way is understood: 47.2184 N 11.9051 E, 47° 13′ 6″ N 11° 54′ 18″ E, a pair as another program copies it, a grid reference such as 32T PT 90812 32711, or UTM with its zone such as 32T 690812 5232711. All on WGS 84.',
      'View, Places as, sets the form in which places are shown. On a phone, hold a finger on the map to see where that is and how high: nothing is placed by it.',
    ],
  },
  {
    ask: 'What do the signs on the map mean?',
    answer: [
      'Legend, beside Measure and Lock on the map, shows each of them as it is drawn.',
      'A box with two dots is a telephone, one with a cross has the supply, one with cords that hang from a bar is a board worked by hand, one with a ring an automatic exchange. A circle is a bend, a diamond a splice where a spool ends, a triangle with a mark a caution. Copper-coloured is wire: a full line lies on the surface, one with ticks hangs overhead, a broken one is buried, a dotted one lies under water. A double line is a trunk from one board to another.',
    ],
  },
]
