/** How a figure is measured in the field, by its member name: a sentence each. */
const HOW: Readonly<Record<string, string>> = {
  loopOhmPerKm: 'Twist the far ends of a known length together, and read the ohms at the near end.',
  nanoFPerKm:
    'Leave the far ends of a known length of dry wire open, and read the capacitance at the near end.',
  wetNanoFPerKm:
    'Leave the far ends of a known length of wet wire open, and read the capacitance at the near end.',
  dryMicroSPerKm:
    'Leave the far ends of a known length of dry wire open, and read the insulation at the near end.',
  wetMicroSPerKm:
    'Leave the far ends of a known length of wet wire open, and read the insulation at the near end.',
  wornMicroSPerKm:
    'Leave the far ends of a known length of old, wet wire open, and read the insulation at the near end.',
  'ringer.minVolts':
    'Ring it through a resistor that you raise until the bell only just rings, and read the volts across the bell.',
  'ringer.ohms': 'Take the bell off the line, and read its ohms; short out its capacitor, if it has one.',
  'ringer.microF': 'Take the capacitor off the bell, and read it.',
  'generator.volts': 'Turn the crank as you would to call, with nothing connected, and read the volts.',
  'offHook.minMA':
    'Feed the set through a resistor that you raise until the other end only just understands, and read the current.',
  'offHook.dcOhms':
    'Lift the handset on a line that is fed, and divide the volts across the set by the current through it.',
  'offHook.dropVolts':
    'Feed the set through a large resistor, lift the handset, and read the volts across it.',
  'ring.volts': 'Let it ring with nothing connected, and read the volts.',
  volts: 'Read the volts with nothing connected.',
  maxMA: 'Short the line at the supply through the meter, and read the current.',
  maxLossDb: 'Put pads of a known loss between two sets until the words only just come through.',
}

/** How to measure a figure; empty where nothing better is known than its name. */
export const howToMeasure = (what: string): string => HOW[what] ?? ''
