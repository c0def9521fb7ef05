import { type OccupiedRegisters, RegisterMap } from '../evaluate/registers.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, Rule, SiteView } from './rule.ts';

export const rule: Rule = {
  name: 'register-overlap',
  group: 'Outputs and alarms',
  severity: 'error',
  title: 'Two signals use one register of one device.',
  why: 'A register holds one number. Of two signals in one register one is always wrong, and half a 32-bit number in the register of another makes nonsense of both.',
  mend: 'Give the second signal registers of its own. Formats of 32 bits take two.',
  leavesAlone:
    'Registers of devices that have the same address on different buses, where no address is given: each point, or each transmitter, is then taken to have a device of its own.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: { site: overlapping },
};

function overlapping({ points }: SiteView): readonly FindingDraft[] {
  const map = new RegisterMap(points.filter(({ entry }) => !entry.broken));
  return map.registers.flatMap((second): FindingDraft[] => {
    const first = map.earlier(second);
    if (first === undefined) return [];
    const free = map.nextFreeAddress(second);
    const whose = first.tag === second.tag ? first.use.name : `${first.use.name} of ${first.tag}`;
    return [
      {
        message: () =>
          `${second.use.name} takes ${words(second)} of ${second.deviceWords}, and ${whose} takes ${words(first)}. Give each its own.`,
        origin: second.address.origin,
        subject: second.tag,
        related: () => [{ message: `${first.use.name} has its address here.`, origin: first.address.origin }],
        fixes: () => [
          {
            title: `Move ${second.use.name} to ${words({ ...second, address: { ...second.address, value: free } })}, which nothing uses in this file`,
            kind: 'choice',
            edits: [replaceScalar(second.address.cursor, String(free))],
          },
        ],
      },
    ];
  });
}

function words({ address, count }: OccupiedRegisters): string {
  return count === 1 ? `register ${address.value}` : `registers ${address.value} and ${address.value + 1}`;
}
