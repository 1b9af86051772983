/** A PDF to be printed, with the same fonts and dates whenever it is made, and the bytes it comes to. */
import PDFDocument from 'pdfkit';
import { fontFile } from './fonts.js';

export type Doc = InstanceType<typeof PDFDocument>;

/** `size` and `margin` in points. `autoFirstPage`: false where each page is begun by hand. */
export const newDocument = ({
  title,
  ...layout
}: {
  readonly title: string;
  readonly size: [number, number];
  readonly margin: number;
  readonly autoFirstPage?: boolean;
}): { readonly doc: Doc; readonly finished: Promise<Buffer> } => {
  const doc = new PDFDocument({
    ...layout,
    // Else it begins with a font of its own, which a bundle does not hold.
    font: fontFile('DejaVuSans'),
    lang: 'en',
    tagged: true,
    pdfVersion: '1.7',
    displayTitle: true,
    info: { Title: title, CreationDate: new Date(0), ModDate: new Date(0) },
  });
  doc.registerFont('regular', fontFile('DejaVuSans'));
  doc.registerFont('bold', fontFile('DejaVuSans-Bold'));
  const chunks: Buffer[] = [];
  const finished = new Promise<Buffer>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  return { doc, finished };
};
