/** The page forbids code made from text; the schema library is told before its first use, or it would try. */
import * as z from 'zod';

z.config({ jitless: true });
