import type { Keys, Kind } from './key.ts';

const vehicle = {
  description: {
    holds: 'sentence',
    meaning: 'which vehicle it is',
    example: 'island rental fleet, van 14',
  },
  make: { holds: 'sentence', meaning: 'who made it', example: 'invented' },
  model: { holds: 'sentence', meaning: 'its model', example: 'van' },
  year: { holds: 'quantity', meaning: 'the model year', example: '2011' },
  market: {
    holds: 'sentence',
    meaning: 'the market or emission standard it was built for',
    example: 'Euro 5',
  },
  transmission: { holds: 'sentence', meaning: 'its transmission', example: 'automatic, five speeds' },
  odometer: { holds: 'quantity', meaning: 'distance driven', example: '128400 km' },
  vin: { holds: 'text', meaning: 'the vehicle identification number, where it may be shared', example: '' },
} as const satisfies Keys;

const engine = {
  description: { holds: 'sentence', meaning: 'the engine in words', example: 'four cylinders in line' },
  displacement: { holds: 'quantity', meaning: 'swept volume of all cylinders', example: '2.4 L' },
  cylinders: { holds: 'quantity', meaning: 'number of cylinders', example: '4' },
  'firing order': { holds: 'text', meaning: 'cylinders in the order they fire', example: '1-3-4-2' },
  strokes: { holds: 'quantity', meaning: 'strokes of a cycle; 4 when left out', example: '4' },
  bore: { holds: 'quantity', meaning: 'cylinder diameter', example: '88.5 mm' },
  stroke: { holds: 'quantity', meaning: 'piston travel', example: '96 mm' },
  'rod length': { holds: 'quantity', meaning: 'connecting rod, eye to eye', example: '144 mm' },
  'compression ratio': { holds: 'quantity', meaning: 'largest to smallest cylinder volume', example: '10.5' },
  fuel: { holds: 'text', meaning: 'the fuel in the tank', example: 'E10' },
  aspiration: {
    holds: { words: ['natural', 'turbocharged', 'supercharged'] },
    meaning: 'how the air gets in',
    example: 'natural',
  },
  metering: {
    holds: { words: ['air flow', 'manifold pressure', 'both'] },
    meaning: 'what the engine management measures the air with',
    example: 'air flow',
  },
  injection: {
    holds: { words: ['port', 'direct', 'port and direct', 'throttle body', 'carburettor'] },
    meaning: 'where the fuel is injected',
    example: 'port',
  },
  'front sensor': {
    holds: { words: ['zirconia', 'titania', 'wideband'] },
    meaning: 'the kind of oxygen sensor before the catalyst',
    example: 'zirconia',
  },
  'idle control': {
    holds: { words: ['valve', 'throttle'] },
    meaning: 'what passes the idle air',
    example: 'valve',
  },
  'cam drive teeth': { holds: 'quantity', meaning: 'teeth on the camshaft’s wheel', example: '40' },
  'fuel pressure': { holds: 'quantity', meaning: 'the maker’s fuel pressure', example: '50 psi gauge' },
  'injector flow': {
    holds: 'quantity',
    meaning: 'an injector’s flow at the maker’s fuel pressure',
    example: '240 cc/min',
  },
  'peak air flow': {
    holds: 'quantity',
    meaning: 'air flow at wide open throttle at the standard atmosphere',
    example: '180 g/s',
  },
  'idle speed': { holds: 'quantity', meaning: 'the speed that idle is held at', example: '750 rpm' },
  thermostat: { holds: 'quantity', meaning: 'where the thermostat begins to open', example: '82 °C' },
} as const satisfies Keys;

const site = {
  description: { holds: 'sentence', meaning: 'where it was measured', example: 'the yard by the harbour' },
  altitude: { holds: 'quantity', meaning: 'height above sea level', example: '35 ft' },
  'sea level pressure': {
    holds: 'quantity',
    meaning: 'the weather report’s figure (altimeter setting, QNH)',
    example: '29.88 inHg',
  },
  temperature: { holds: 'quantity', meaning: 'air temperature at the site', example: '68 °F' },
  humidity: { holds: 'quantity', meaning: 'relative humidity of the air', example: '60 %' },
} as const satisfies Keys;

const code = {
  code: { holds: 'text', meaning: 'the trouble code', example: 'P0507', required: true },
  status: {
    holds: { words: ['stored', 'pending', 'permanent', 'history'] },
    meaning: 'how the engine management holds it; stored when left out',
    example: 'pending',
  },
  meaning: { holds: 'sentence', meaning: 'what the code says', example: 'idle speed higher than expected' },
} as const satisfies Keys;

const ownSignal = {
  meaning: { holds: 'sentence', meaning: 'what it measures', example: 'oil temperature in the sump' },
  unit: { holds: 'text', meaning: 'the unit it is usually read in', example: '°C' },
  kind: {
    holds: { words: ['absolute', 'gauge', 'vacuum', 'difference', 'point', 'btdc', 'atdc', 'bbdc', 'abdc'] },
    meaning: 'the kind of pressure, temperature or crank angle',
    example: 'point',
  },
  by: {
    holds: { words: ['cylinder', 'label'] },
    meaning: 'what its members are, when it has several',
    example: 'cylinder',
  },
  words: {
    holds: { list: 'text' },
    meaning: 'the words it may hold, when it holds no number',
    example: '[open, closed]',
  },
  possible: { holds: 'quantity', meaning: 'the range that can occur at all', example: '-40 .. 170 °C' },
} as const satisfies Keys;

const toolKeys = {
  description: { holds: 'sentence', meaning: 'what it is', example: 'vacuum gauge' },
  accuracy: { holds: 'quantity', meaning: 'half-width of what it reads', example: '0.2 inHg' },
} as const satisfies Keys;

export const diag = {
  meaning: 'the header: which case this is and what it is about',
  title: 'text',
  keys: {
    case: { holds: 'sentence', meaning: 'the case’s title', example: 'Hunts at idle', required: true },
    vehicle: {
      holds: { keys: vehicle, short: 'description' },
      meaning: 'the vehicle',
      example: 'year: 2011',
    },
    engine: { holds: { keys: engine, short: 'description' }, meaning: 'the engine', example: 'cylinders: 4' },
    site: {
      holds: { keys: site, short: 'description' },
      meaning: 'where and in what air',
      example: 'altitude: 35 ft',
    },
    tools: {
      holds: { named: { keys: toolKeys, short: 'description' } },
      meaning: 'the instruments, each under a short name',
      example: 'gauge: {description: vacuum gauge, accuracy: 0.2 inHg}',
    },
    'customer says': {
      holds: 'sentence',
      meaning: 'the complaint in the customer’s words',
      example: 'Idle swings at the lights, fine on the highway.',
    },
    confirmed: { holds: 'sentence', meaning: 'how the complaint was confirmed', example: 'Yes, when warm.' },
    history: {
      holds: { list: 'sentence' },
      meaning: 'what was done before',
      example: 'Intake was off last week.',
    },
    codes: {
      holds: { list: { keys: code, short: 'code' } },
      meaning: 'the trouble codes',
      example: '- P0171',
    },
    tags: { holds: { list: 'text' }, meaning: 'words to find the case by', example: '[idle, intake]' },
    outcome: { holds: { words: ['open', 'solved'] }, meaning: 'how far the case is', example: 'solved' },
    cause: { holds: 'sentence', meaning: 'what it was', example: 'Plenum gasket folded at one corner.' },
    repair: { holds: 'sentence', meaning: 'what was done about it', example: 'New plenum gasket.' },
    teaching: {
      holds: { words: ['yes'] },
      meaning: 'the case is meant to be worked by students',
      example: 'yes',
    },
    objectives: {
      holds: { list: 'sentence' },
      meaning: 'what a student should be able to do afterwards',
      example: '- Tell a leak from weak fuel by trims at three loads.',
    },
    signals: {
      holds: { named: { keys: ownSignal }, inExpressions: true },
      meaning: 'the case’s own signals, each under its name',
      example: 'sump_temperature: {meaning: oil in the sump, unit: °C}',
    },
    author: { holds: { list: 'sentence' }, meaning: 'who wrote the case', example: 'the fleet workshop' },
    license: { holds: 'sentence', meaning: 'on what terms others may use it', example: 'CC BY 4.0' },
  },
} as const satisfies Kind;
