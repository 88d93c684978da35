import type { CasePage, Figure } from '../../core/report/blocks.ts';

const figure = (number: string, plusMinus?: string): Figure => ({ number, plusMinus, words: undefined });
const none = (words: string): Figure => ({ number: undefined, plusMinus: undefined, words });

/** One pixel, made for this test. */
const pixel =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';

/** A page with every kind of block, as a study of an invented case would give it. */
export const samplePage: CasePage = {
  title: 'Hunts at idle after the intake was off',
  summary: [
    'Island rental fleet, van 14. Solved: plenum gasket folded at one corner.',
    'Of 5 expectations 4 hold, 1 fails (1 to show the fault).',
  ],
  sections: [
    {
      number: 1,
      title: '',
      margin: ['The case'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'facts',
          rows: [
            { name: 'Customer says', runs: ['Idle swings at the lights, fine on the highway.'] },
            { name: 'Vehicle', runs: ['island rental fleet, van 14; year 2011; odometer 128400 km'] },
            {
              name: 'Engine',
              runs: [
                'displacement 2.4 L; cylinders 4; firing order 1-3-4-2; compression ratio 10.5; fuel E10',
              ],
            },
            { name: 'Codes', runs: ['P0171; P0507 (pending)'] },
            { name: 'Tools', runs: [{ code: 'gauge' }, ' vacuum gauge, ± 0.2 inHg'] },
          ],
        },
      ],
    },
    {
      number: 2,
      title: '',
      margin: [],
      as: undefined,
      audience: 'for the teacher',
      keptBack: false,
      blocks: [
        {
          kind: 'prose',
          markdown:
            '## How to run this case\n\nLet them *add the two readings* before anyone says **leak**.\n\n- one group with the gauge\n- one with scan data',
        },
      ],
    },
    {
      number: 3,
      title: 'Three loads, before',
      margin: ['Readings', 'before', 'with scan'],
      as: 'before',
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'caution',
          title: 'Running engine',
          text: 'Draw the exhaust off or work in the open. The maker’s service information, local rules and licensed practice come first.',
        },
        { kind: 'paragraph', runs: ['idle: warm idle; fast: 2500 rpm no load; drive: cruise, gear 4.'] },
        {
          kind: 'table',
          caption: '',
          rowsAre: 'reading',
          columns: ['idle', 'fast', 'drive'],
          rows: [
            {
              name: 'Engine speed',
              key: 'rpm',
              figures: [figure('780'), figure('2500'), figure('2240')],
              unit: 'rpm',
              other: undefined,
              remarks: [],
              strips: [],
            },
            {
              name: 'Intake manifold pressure',
              key: 'map',
              figures: [figure('13.1'), figure('9.8'), figure('17.0')],
              unit: 'inHg absolute',
              other: { figures: [figure('44.4'), figure('33.2'), figure('57.6')], unit: 'kPa' },
              remarks: [],
              strips: [],
            },
            {
              name: 'Long-term fuel trim, bank 1',
              key: 'ltft_b1',
              figures: [figure('17'), figure('6'), figure('-3')],
              unit: '%',
              other: undefined,
              remarks: [],
              strips: [
                {
                  low: -10,
                  high: 10,
                  value: 17,
                  plusMinus: 0,
                  says: 'usual at warm idle: -10 .. 10 % (common practice)',
                },
              ],
            },
            {
              name: 'Idle air control',
              key: 'iac',
              figures: [figure('3'), figure('11'), none('not taken')],
              unit: '%',
              other: undefined,
              remarks: [],
              strips: [],
            },
          ],
        },
      ],
    },
    {
      number: 4,
      title: 'Gauge at idle',
      margin: ['Readings', 'before', 'warm idle'],
      as: 'gauged',
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'table',
          caption: '',
          rowsAre: 'reading',
          columns: [],
          rows: [
            {
              name: 'Manifold vacuum',
              key: 'vacuum',
              figures: [figure('14.4', '0.2')],
              unit: 'inHg vacuum',
              other: { figures: [figure('48.76', '0.68')], unit: 'kPa' },
              remarks: [['at brake booster port; steady; with gauge']],
              strips: [
                {
                  low: 17,
                  high: 22,
                  value: 14.4,
                  plusMinus: 0.2,
                  says: 'usual at warm idle: 17 .. 22 inHg (common practice)',
                },
              ],
            },
            {
              name: 'Battery voltage',
              key: 'battery',
              figures: [figure('13.85')],
              unit: 'V',
              other: undefined,
              remarks: [],
              strips: [],
            },
            {
              name: 'Fuel system loop',
              key: 'loop',
              figures: [none('closed')],
              unit: '',
              other: undefined,
              remarks: [],
              strips: [],
            },
          ],
        },
        {
          kind: 'table',
          caption: '',
          rowsAre: 'reading',
          columns: ['cyl. 1', 'cyl. 2', 'cyl. 3', 'cyl. 4'],
          rows: [
            {
              name: 'Compression',
              key: 'compression',
              figures: [figure('181'), figure('178'), figure('180'), figure('179')],
              unit: 'psi gauge',
              other: {
                figures: [figure('1248'), figure('1227'), figure('1241'), figure('1234')],
                unit: 'kPa',
              },
              remarks: [],
              strips: [],
            },
          ],
        },
      ],
    },
    {
      number: 5,
      title: 'Do the gauge and the sensor agree with the barometer?',
      margin: ['Check'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'table',
          caption: '',
          rowsAre: 'computed',
          remarksAre: 'from',
          columns: [],
          rows: [
            {
              name: 'baro_seen',
              key: undefined,
              figures: [figure('29.5', '0.2')],
              unit: 'inHg absolute',
              other: { figures: [figure('99.90', '0.68')], unit: 'kPa' },
              remarks: [[{ code: 'before.idle.map + gauged.vacuum' }]],
              strips: [],
            },
          ],
        },
        {
          kind: 'verdict',
          text: 'baro_seen within 0.5 inHg of koeo.map',
          sign: '✓',
          measured: '29.5 ± 0.2 inHg, 0.4 inHg inside 0.5 inHg of 29.6 inHg',
          word: 'holds',
          remark: undefined,
          why: undefined,
          ifFails: undefined,
          from: ['before.idle.map', 'gauged.vacuum', 'koeo.map'],
        },
        {
          kind: 'verdict',
          text: 'idle between -10 % and 10 %',
          sign: '✗',
          measured: '25 %, 15 % outside -10 .. 10 %',
          word: 'fails',
          remark: 'and shows the fault as the author means it to',
          why: undefined,
          ifFails: 'Look for unmetered air before fuel.',
          from: ['before.idle.stft_b1', 'before.idle.ltft_b1'],
        },
        {
          kind: 'paragraph',
          lead: 'Because',
          runs: ['Manifold pressure and manifold vacuum are two sides of one number.'],
        },
        {
          kind: 'finding',
          severity: 'error',
          code: 'unit-slip',
          message:
            '`map` cannot be 101 inHg (possible: 0 .. 90 inHg). The same number fits in another unit: 101 kPa?',
          line: 21,
          column: 8,
          frame: { before: '  map: ', marked: '101 inHg', after: '' },
          offers: ['Write 101 kPa'],
        },
      ],
    },
    {
      number: 6,
      title: 'Smoke into the intake',
      margin: ['Test'],
      as: 'smoke',
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'facts',
          rows: [
            { name: 'Did', runs: ['Half a psi of smoke through the booster hose.'] },
            { name: 'Found', runs: ['Smoke at the gasket, none at the injector seals.'] },
            { name: 'Result', runs: ['yes'] },
          ],
        },
        {
          kind: 'picture',
          file: 'pictures/gasket.png',
          alt: 'A folded gasket <drawn>.',
          dataUri: pixel,
          missing: undefined,
        },
        {
          kind: 'picture',
          file: 'pictures/lost.png',
          alt: 'The plenum.',
          dataUri: undefined,
          missing: 'The file could not be read.',
        },
      ],
    },
    {
      number: 7,
      title: 'Lean at idle only',
      margin: ['Suspects'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [
        {
          kind: 'suspect',
          name: 'air past the meter',
          standing: 'still possible',
          sign: '≈',
          for: [
            [
              'it predicts ',
              { code: 'trims.idle > trims.fast' },
              ', which holds (25 %, 17 % above the limit of 8 %)',
            ],
            ['it predicts ', { code: 'smoke.result is yes' }, ', which holds'],
          ],
          against: [],
          missing: [],
        },
        {
          kind: 'suspect',
          name: 'weak fuel supply',
          standing: 'ruled out',
          sign: '✗',
          for: [],
          against: [
            [
              'it predicts ',
              { code: 'trims.fast > trims.idle' },
              ', which fails (8 %, 17 % below the limit of 25 %)',
            ],
          ],
          missing: [['it predicts ', { code: 'fuel_pressure < 45 psi' }, ', not measured']],
        },
        {
          kind: 'paragraph',
          lead: 'Next',
          runs: ['Measure ', { code: 'fuel_pressure' }, ': it separates the most suspects that are left.'],
        },
      ],
    },
    {
      number: 8,
      title: 'What should the barometer read here?',
      margin: ['Question', '2 points'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [
        { kind: 'paragraph', runs: ['You are near sea level. Add the two readings and say what you get.'] },
        { kind: 'bullets', style: 'letter', items: [['about 30 inHg'], ['about 25 inHg']] },
      ],
    },
    {
      number: 9,
      title: 'A cell that could not be read',
      margin: ['Unread'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [{ kind: 'source', text: 'found: ] <smoke>\n' }],
    },
  ],
  answers: [
    {
      number: 8,
      title: 'What should the barometer read here?',
      blocks: [
        {
          kind: 'paragraph',
          lead: 'Answer',
          runs: [{ code: 'before.idle.map + gauged.vacuum' }, '; accepted: 0.3 inHg'],
        },
      ],
    },
  ],
  after: [
    {
      number: 1,
      title: 'What it was',
      margin: ['Cause and repair'],
      as: undefined,
      audience: undefined,
      keptBack: false,
      blocks: [{ kind: 'facts', rows: [{ name: 'Cause', runs: ['A folded gasket.'] }] }],
    },
  ],
};
