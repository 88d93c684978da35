import { carried, type NumberPart, type ParameterRow, type Part } from '../../../engine/obd/parameter.ts';
import { allParameters } from '../../../engine/obd/parameterTable.ts';
import { formatNumber } from '../../../quantity/format.ts';

/** The parameters of generic data, from the table that decodes them. */
export function parametersReference(): string {
  return `# Parameters of generic data

What the answers of service 01 (and 02, the freeze frame) hold: SAE J1979 / ISO 15031-5.
A is the first byte behind the parameter's number, B the second, and so on.
A value with a signal becomes a reading of that name; the others are shown by \`casebook decode\`.
"Found" scalings were read in public copies of the table; the others are values from memory of J1979DA, Annex B.

| parameter | bytes | what | value | range | unit | signal | source |
| --- | --- | --- | --- | --- | --- | --- | --- |
${allParameters().flatMap(rowsOf).join('\n')}

Parameters 4F and 50 give other ends of the scales of lambda, sensor voltage and current, manifold pressure and air flow.
A vehicle that answers 1D numbers its oxygen sensors as four banks of two: 16 is then the first sensor of bank 2.
Bits of 01 say the lamp, the number of codes and each monitor; a monitor that the vehicle does not have is \`not supported\`.
`;
}

function rowsOf({ pid, bytes, parts, source }: ParameterRow): string[] {
  return parts.map((part) => {
    const cells = [
      `$${pid.toString(16).toUpperCase().padStart(2, '0')}`,
      `${bytes}`,
      part.meaning,
      ...(part.holds === 'number' ? numberCells(part) : [wordsOf(part), '', '']),
      part.signal === undefined ? '' : `\`${part.signal}\``,
      source,
    ];
    return `| ${cells.join(' | ')} |`;
  });
}

function numberCells(part: NumberPart): string[] {
  const { low, high } = carried(part);
  const kind = ['absolute', 'gauge', 'difference'].includes(part.kind) ? ` ${part.kind}` : '';
  const range = `${formatNumber(low, 0, 7)} .. ${formatNumber(high, 0, 7)}`;
  return [formulaOf(part), range, `${part.unit === '1' ? '' : part.unit}${kind}`];
}

/** `(256 A + B) × 100 / 255 − 40` */
function formulaOf({ at, size, times, over, plus, signed }: NumberPart): string {
  const letters = Array.from({ length: size }, (_, i) => {
    const weight = 256 ** (size - 1 - i);
    return `${weight === 1 ? '' : `${weight} `}${String.fromCharCode(65 + at + i)}`;
  }).join(' + ');
  const raw = size === 1 ? letters : `(${letters})`;
  const scaled = [raw, ...(times === 1 ? [] : [`× ${times}`]), ...(over === 1 ? [] : [`/ ${over}`])].join(
    ' ',
  );
  const moved = plus === 0 ? scaled : `${scaled} ${plus < 0 ? '−' : '+'} ${Math.abs(plus)}`;
  return signed ? `${moved}, two’s complement` : moved;
}

function wordsOf(part: Part): string {
  switch (part.holds) {
    case 'word':
      return [...part.words]
        .map(([raw, word]) => `${raw.toString(16).toUpperCase().padStart(2, '0')} ${word}`)
        .join(', ');
    case 'monitors':
      return 'lamp, number of codes, monitors';
    case 'cycle monitors':
      return 'monitors: enabled, not complete';
    case 'code':
      return 'a trouble code';
    case 'supported':
      return 'a bit for each of the next 32 parameters';
    case 'flags':
      return part.bits === undefined ? 'bits' : `bits: ${part.bits.join(', ')}`;
    case 'number':
      return '';
  }
}
