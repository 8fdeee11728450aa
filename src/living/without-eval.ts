import { config } from 'zod';

// the page forbids making code from text, and a browser complains of the mere try: told before any schema is made
config({ jitless: true });
