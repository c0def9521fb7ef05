import { expect, it } from 'vitest';
import { element, writeMarkup } from '../../server/src/base/markup.ts';
import { drawing, label, placeAttributes, polygon, withoutPlaces } from '../../server/src/pictures/svg.ts';

const PLACE = { file: 'file:///site.dewsite.yaml', start: 12 };

it('text and attribute values are escaped and can become no element', () => {
  const hostile = `</text><script>alert("1")</script>&'`;
  expect(writeMarkup(label([1, 2], hostile, { 'aria-label': hostile }))).toBe(
    '<text x="1" y="2" aria-label="&lt;/text&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;&#39;">' +
      '&lt;/text&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;&#39;</text>',
  );
});

it('characters that XML does not allow are shown as unknown ones', () => {
  expect(writeMarkup('a\u0000b\ud800c\u{1f4a7}')).toBe('a\ufffdb\ufffdc\u{1f4a7}');
});

it('numbers keep two decimals, and attributes without a value are left out', () => {
  expect(writeMarkup(element('input', { min: 1.23456, max: -0.001, disabled: true, value: undefined }))).toBe(
    '<input min="1.23" max="0" disabled="">',
  );
});

it('a drawing is one image to a screen reader, and a document where its parts lead somewhere', () => {
  const frame = { width: 10, height: 10, title: 'T', description: 'D' };
  const triangle = polygon(
    [
      [0, 0],
      [4, 0],
      [4, 3],
    ],
    placeAttributes(PLACE, 'a triangle'),
  );
  expect(writeMarkup(drawing({ ...frame, content: [] }))).toContain('role="img"');
  expect(writeMarkup(drawing({ ...frame, content: [triangle] }))).toContain('role="graphics-document"');
});

it('without its places a drawing says nothing of where files lie', () => {
  const triangle = polygon(
    [
      [0, 0],
      [4, 0],
      [4, 3],
    ],
    placeAttributes(PLACE, 'a triangle'),
  );
  expect(writeMarkup(withoutPlaces(element('g', {}, [triangle])))).toBe(
    '<g><path d="M0 0L4 0L4 3Z" role="img" aria-label="a triangle"></path></g>',
  );
});
