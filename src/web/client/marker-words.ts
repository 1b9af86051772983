/** How a marker feels, in the words of the page. */
import type { Marker } from '../../../shared/client/http.js';
import { recordWord, t } from './language.js';

/** "bead, wooden, two knots, neck". */
export const nameOf = ({ touch }: Pick<Marker, 'touch'>): string =>
  [
    ...[touch.fastening, touch.shape, touch.texture].map((word) => word && recordWord(word)),
    touch.dots === undefined ? undefined : t(`counted-${touch.counted ?? 'dot'}`, { count: touch.dots }),
    touch.spot && recordWord(touch.spot),
  ]
    .filter(Boolean)
    .join(', ') || t('labels-marker');
