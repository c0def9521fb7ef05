import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Workspace } from '../../server/src/analysis/workspace.ts';

const PROJECT = new URL('../../', import.meta.url);
const SITE = 'file:///fennmoor/bakery.dewsite.yaml';
const KIT = 'file:///fennmoor/kits/own.dewkit.yaml';

interface Step {
  readonly id: string;
  readonly media: { readonly markdown: string };
}

const { commands, walkthroughs } = JSON.parse(readFileSync(new URL('package.json', PROJECT), 'utf8')).contributes;
const steps: readonly Step[] = walkthroughs[0].steps;
const texts: Readonly<Record<string, string>> = JSON.parse(readFileSync(new URL('package.nls.json', PROJECT), 'utf8'));

it('every step offers one action, and those of Dewright exist', () => {
  const own: readonly string[] = commands.map(({ command }: { readonly command: string }) => command);
  for (const { id } of steps) {
    const actions = [...(texts[`walkthrough.${id}.description`] ?? '').matchAll(/\(command:([\w.]+)/g)];
    const [, command = ''] = actions[0] ?? [];
    expect(actions, id).toHaveLength(1);
    if (command.startsWith('dewright.')) expect(own).toContain(command);
  }
});

describe.each(['.md', '.nls.de.md'])('the steps as told in *%s', (ending) => {
  it('each has its page', () => {
    expect(steps.map(pageOf).filter((page) => !existsSync(new URL(page, PROJECT)))).toEqual([]);
  });

  it('lead from a site with the one finding that is spoken of to a clean point', () => {
    const [site, kit, plan] = ['new-site', 'kit', 'finding'].map(exampleIn);
    const workspace = new Workspace({ today: () => '2026-11-02' });
    workspace.set(KIT, kit ?? '');
    workspace.set(SITE, site ?? '');
    expect(rulesFound(workspace, KIT)).toEqual([]);
    expect(rulesFound(workspace, SITE)).toEqual(['check-plan-missing']);
    workspace.set(SITE, `${site}${plan}`);
    expect(rulesFound(workspace, SITE)).toEqual([]);
  });

  function pageOf({ media }: Step): string {
    return media.markdown.replace(/\.md$/, ending);
  }

  function exampleIn(id: string): string | undefined {
    const step = steps.find((each) => each.id === id);
    const page = step && readFileSync(new URL(pageOf(step), PROJECT), 'utf8');
    return page && /```yaml\n(.*?)```/s.exec(page)?.[1];
  }
});

function rulesFound(workspace: Workspace, file: string): readonly string[] | undefined {
  return workspace.analysis(file)?.findings.map(({ rule }) => rule);
}
