/**
 * The page that a view is shown in. It may run the one script that belongs to it, and nothing else: no network, no
 * images, no styles but those the script brings. What is shown arrives as a message.
 */
import { env, l10n, Uri, type Webview } from 'vscode';
import { element, type MarkupElement, writeMarkup } from '../../../server/src/base/markup.ts';

/** Where the scripts of the pages are, in the folder of the extension. */
export const PAGE_SCRIPTS = 'client/dist';

export function viewPage(webview: Webview, extension: Uri, title: string): string {
  const nonce = crypto.randomUUID();
  const script = webview.asWebviewUri(Uri.joinPath(extension, PAGE_SCRIPTS, 'view.js')).toString();
  const policy = {
    'http-equiv': 'Content-Security-Policy',
    content: `default-src 'none'; script-src 'nonce-${nonce}'`,
  };
  const page = element('html', { lang: env.language }, [
    element('head', {}, [
      element('meta', { charset: 'utf-8' }),
      element('meta', policy),
      element('title', {}, [title]),
    ]),
    element('body', {}, [
      element('header', { role: 'toolbar', 'aria-label': l10n.t('Picture'), hidden: true }, toolbar()),
      element('main', { lang: 'en' }), // what the server says is in English
      element('footer', {}, [element('output', { 'aria-live': 'polite', lang: 'en' })]),
      element('script', { nonce, src: script }),
    ]),
  ]);
  return `<!DOCTYPE html>${writeMarkup(page)}`;
}

function toolbar(): readonly MarkupElement[] {
  const button = (action: string, sign: string, title: string): MarkupElement =>
    element('button', { type: 'button', 'data-action': action, title, 'aria-label': title }, [sign]);
  return [
    button('zoom-in', '+', l10n.t('Zoom In')),
    button('zoom-out', '−', l10n.t('Zoom Out')),
    button('zoom-reset', '⤢', l10n.t('Show the Whole Picture')),
    button('copy', 'SVG', l10n.t('Copy Picture as SVG')),
  ];
}
