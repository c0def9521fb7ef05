/** A drawing in the page: where it is on the screen, and which part of it is seen. */

/** A spot of the screen in the drawing's own coordinates. */
export function spotOf(drawing: SVGSVGElement, { clientX, clientY }: MouseEvent): readonly [x: number, y: number] {
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(drawing.getScreenCTM()?.inverse());
  return [x, y];
}

/** The length of one pixel of the screen in the drawing's own coordinates. */
export function userUnit(drawing: SVGSVGElement): number {
  return 1 / (drawing.getScreenCTM()?.a ?? 1);
}

/** `x y width height` of the whole drawing, whatever part of it is seen. */
export function wholeOf(drawing: SVGSVGElement): readonly [x: number, y: number, width: number, height: number] {
  drawing.dataset['whole'] ??= drawing.getAttribute('viewBox') ?? '';
  const [x = 0, y = 0, width = 1, height = 1] = drawing.dataset['whole'].split(' ').map(Number);
  return [x, y, width, height];
}
