interface Topic {
  readonly ask: string
  /** Other questions of the panel that the same answer helps with. */
  readonly also?: readonly string[]
  readonly answer: readonly string[]
}

/** What the questions mean that a person has, in plain words. */
export const TOPICS: readonly Topic[] = [
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
    ask: 'Is there enough current?',
    answer: [
      'Where a battery or an exchange feeds the telephones, each needs some thousandths of an ampere through it. Long thin wire and a spent battery leave less. Each row gives what flows, and what the telephone needs.',
    ],
  },
  {
    ask: 'How do we call?',
    also: ['What if a handset is left off?', 'What if everybody listens?', 'How many calls at once?'],
    answer: [
      'On a party line every bell rings at every call: agree on a ring for each station, such as two short and one long. A board rings only the one that is wanted.',
    ],
  },
  {
    ask: 'How sure is it?',
    answer: [
      'Real wire, bells and batteries differ from the figures in books. The program tries a great many such circuits, each with other luck, and counts how many work. It names the figure that is most worth measuring; type in what you measured, and it reckons with that.',
    ],
  },
  {
    ask: 'How far could it go?',
    also: ['How far could the next telephone stand?'],
    answer: [
      'The longest line of this wire over which the same telephones still ring and are heard, today and in the worst weather. Tables below it compare other wires and supplies.',
    ],
  },
  {
    ask: 'What would mend it?',
    answer: [
      'Each change listed was tried on your plan: it works with it. Press Apply, and undo it if you think again.',
    ],
  },
  {
    ask: 'What is it made of?',
    also: ['Who answers here?', 'Who speaks over it?', 'Which lines end here?'],
    answer: [
      'A circuit is the lines that are joined, the telephone at each station, and what feeds or rings them. Telephones with their own batteries and cranks need no supply. A station without a telephone is a joint: nobody answers there.',
    ],
  },
  {
    ask: 'What do we carry?',
    answer: [
      'The wire to lay, with slack, splices and a reserve, cut from spools. Say in the list what you have; without it, whole spools of the usual sizes are counted.',
    ],
  },
  {
    ask: 'How long will it take?',
    answer: [
      'Hours of a crew by way of laying and ground, with splices, crossings and walks for more wire. The rates come from handbooks and can be changed to yours.',
    ],
  },
  {
    ask: 'What could hurt someone?',
    answer: [
      'Cautions from what is drawn: ringing voltage, power lines, roads, rails, water, heights. Draw such things with the tool Hazard or bring them in from a file, or they are not known. Local rules come first.',
    ],
  },
  {
    ask: 'Where is the fault?',
    answer: [
      'Add what you know: who still rings and hears whom, how hard the crank turns, what a meter reads from which end or tag. The likely places show on the map, with what to measure next for the least walking.',
    ],
  },
  {
    ask: 'What ground does it cross?',
    also: ['Do we know the ground?'],
    answer: [
      'Without heights a line is as long as on the map. Open an elevation file, GeoTIFF or SRTM .hgt, or drop one on the page: lengths then follow hills and valleys, and the profile shows them.',
    ],
  },
  {
    ask: 'How does it lie?',
    also: ['Where do the tags hang?', 'What do we allow for?'],
    answer: [
      'Each leg lies on the surface, hangs overhead, is buried or lies under water. That sets its slack, its time and what must be minded. Tags with the line’s number hang at its ends, at joints and on the way; at a test point the pair can be opened and measured.',
    ],
  },
  {
    ask: 'How could they be joined?',
    also: ['How else could it be joined?', 'Which way to another station?'],
    answer: [
      'The program looks for whole nets, or a way between two stations, over the ground that it knows, round keep-out areas, and shows what each costs in wire and hours. Nothing changes until you take one.',
    ],
  },
  {
    ask: 'What weather do we plan for?',
    also: ['What do we work with?'],
    answer: [
      'The first verdict of each circuit holds for the weather and the temperature of the wire chosen here. The second holds for the worst: wet, hot or cold, batteries run down, bells that are hard to ring.',
    ],
  },
  {
    ask: 'What lies, and what is left?',
    answer: [
      'Open a line and press Walk this line, best on a phone: it says what comes next and takes down what was laid, tested, taken up and read. Map and papers then show what lies and what is left.',
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
    ask: 'How does a plan get to another phone?',
    answer: [
      'Plans, Hand the plan on: send the link, or show the codes on this screen and have the other open Plans, Take one from a screen. No network is needed for the codes. What both have changed can be merged.',
    ],
  },
  {
    ask: 'What do I print?',
    answer: [
      'Papers: the net at a glance, a card for each line and each station are ticked at first. Tick others as you need them, choose the size of the sheets, and press Print.',
    ],
  },
  {
    ask: 'How do I give a place?',
    also: ['Where does it stand?'],
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
