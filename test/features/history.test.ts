import { describe, expect, it } from 'vitest';
import { codeLenses } from '../../server/src/features/reading/code-lenses.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { cursorIn, FENNMOOR, SITE } from './fennmoor.ts';
import { openAt } from './marked-files.ts';

const CHECKED = SITE.replace(
  '    supply:',
  '    checks: {interval: 12 months, method: reference-instrument}\n    supply:',
);

/** Half a kelvin of tolerance is left after two years at 0.15 K a year. */
const VISITS = Object.fromEntries(
  [0, 0.15, 0.3].map((error, year) => {
    const date = `${2024 + year}-09-01`;
    const shown = (58 + error).toFixed(2);
    const reading = `{point: K2-MT-101, quantity: dew-point, shown: ${shown} degC, reference: 58 degC, reference-uncertainty: 0.2 K, using: reference-instrument}`;
    return [
      `${date}.dewvisit.yaml`,
      `dewright: 1\nvisit: {site: fennmoor, date: ${date}}\nreadings:\n  - ${reading}\n`,
    ];
  }),
);

function openChecked(site = CHECKED) {
  const { 'first.dewvisit.yaml': _first, 'fennmoor.dewsite.yaml': _site, ...kits } = FENNMOOR;
  return openAt('fennmoor.dewsite.yaml', cursorIn(site, 'checks:'), { ...kits, ...VISITS });
}

describe('the plan of checks', () => {
  const { analysis, offset } = openChecked();
  const hover = hoverAt(analysis, offset)?.markdown ?? '';

  it('shows in its hover every reading with its error and En number', () => {
    expect(hover).toContain('**dew point** against its references');
    expect(hover).toMatch(/\| 2026\\-09\\-01 \| 58\.3 °C \| 58 °C ± 0\.2 K \| 0\.3 K \| 0\.\d+ \|/);
    expect(hover.match(/^\| 202/gm)).toHaveLength(3);
  });

  it('by hand: says a drift of 0.15 K a year, and that 0.8 K is reached three and a third years after 0.3 K', () => {
    expect(hover).toContain('- The drift is 0.15 ± ');
    expect(hover).toMatch(/- The tolerance of 0\.8 K is reached on (2029\\-12|2030\\-01)/);
    expect(hover).toMatch(/- The next check is proposed for 202\d\\-\d\d\\-\d\d by the variables\\-data method\./);
  });

  it('has a picture where the editor shows one', () => {
    const pictured = hoverAt(analysis, offset, ({ quantity }, planned) => `![](data:${quantity},${planned})`);
    expect(pictured?.markdown).toContain('\n\n![](data:dew-point,2027-09-01)\n\n|');
  });

  it('has a line above it with the next check and the drift', () => {
    const [lens] = codeLenses(analysis, new Set(['checks']));
    expect(lens?.title).toMatch(
      /^Next check due on 2027-09-01, proposed for 202\d-\d\d-\d\d by the variables-data method, drift 0\.15 ± 0\.\d\d K in a year$/,
    );
    expect(analysis.parsed.text.slice(lens?.above.start, lens?.above.end)).toBe('checks');
  });

  it('has no line where nothing tells the last check', () => {
    const { 'first.dewvisit.yaml': _first, ...others } = FENNMOOR;
    const alone = openAt('fennmoor.dewsite.yaml', cursorIn(CHECKED, 'checks:'), others);
    expect(codeLenses(alone.analysis, new Set(['checks']))).toEqual([]);
  });
});
