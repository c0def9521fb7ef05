/** Every kind of view that the extension offers, with its command and the files that it follows. */
import { l10n } from 'vscode';

export interface ViewKind {
  /** What the server knows it by. */
  readonly name: string;
  readonly command: string;
  readonly title: string;
  /** The languages of the files that it is about; none where it is about the whole workspace. */
  readonly languages: readonly string[];
}

const SITES = ['dewright-site'];

export function viewKinds(): readonly ViewKind[] {
  return [
    { name: 'chart', command: 'dewright.showChart', title: l10n.t('Moist-Air Chart'), languages: SITES },
    { name: 'point', command: 'dewright.showPoint', title: l10n.t('Point'), languages: SITES },
    { name: 'what-if', command: 'dewright.tryValues', title: l10n.t('Other Values'), languages: SITES },
    { name: 'comparison', command: 'dewright.showChanges', title: l10n.t('Changes'), languages: SITES },
    { name: 'overview', command: 'dewright.showOverview', title: l10n.t('All Points'), languages: [] },
  ];
}
