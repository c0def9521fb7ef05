/** Every kind of view that the extension offers, with its command and the files that it follows. */
import { l10n } from 'vscode';

export interface ViewKind {
  /** What the server knows it by. */
  readonly name: string;
  readonly command: string;
  readonly title: string;
  /** The languages of the files that it is about. */
  readonly languages: readonly string[];
}

export function viewKinds(): readonly ViewKind[] {
  return [
    { name: 'chart', command: 'dewright.showChart', title: l10n.t('Moist-Air Chart'), languages: ['dewright-site'] },
  ];
}
