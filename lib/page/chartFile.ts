import { say } from '../words/say.ts';

const STYLED = ['fill', 'stroke', 'font-family', 'font-size', 'font-weight', 'font-style', 'font-variant-numeric'];

/**
 * A chart on the screen as an SVG file that looks the same alone: fonts and colours that come from the notebook's style
 * sheet are written into it.
 */
export function svgFile(chart: SVGSVGElement): string {
  const copy = chart.cloneNode(true) as SVGSVGElement;
  const originals = [chart, ...chart.querySelectorAll('*')];
  [copy, ...copy.querySelectorAll('*')].forEach((element, index) => {
    const style = getComputedStyle(originals[index]);
    for (const name of STYLED) element.setAttribute(name, style.getPropertyValue(name));
  });
  const { width, height } = chart.getBoundingClientRect();
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  return new XMLSerializer().serializeToString(copy);
}

/**
 * The same as a PNG on white, for a letter or a message.
 * @param scale pixels of the picture to one of the screen
 */
export async function pngFile(chart: SVGSVGElement, scale = 2): Promise<Blob> {
  const { width, height } = chart.getBoundingClientRect();
  const address = URL.createObjectURL(new Blob([svgFile(chart)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.ceil(width * scale);
    canvas.height = Math.ceil(height * scale);
    const context = canvas.getContext('2d')!;
    context.fillStyle = 'white';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) =>
      canvas.toBlob(
        (blob) => (blob ? resolve(blob) : reject(new Error(say`The picture could not be made`))),
        'image/png',
      ),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
