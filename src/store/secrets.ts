/** How tokens and codes are kept: as SHA-256, hex. See `src/server/tokens.ts` for why that is enough. */
import { createHash } from 'node:crypto';

export const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');
