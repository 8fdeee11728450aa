import * as z from 'zod';
import { flag, text } from '../../model/index.js';
import { showInBrowser } from '../../node/index.js';
import { type Command, DONE, FAILED_CHECKS } from '../around/index.js';
import { from, quiet, shop, units, writing } from '../given/index.js';
import { runPipeline, showResult } from '../results/index.js';

const options = {
  from,
  shop,
  out: text({
    default: 'out/living',
    help: 'folder in which the page gets a folder of its own, apart from what make wrote',
  }),
  units,
  ...writing,
  browser: flag({ default: true, help: 'show the page in your browser; --no-browser only writes it' }),
  quiet,
};

/** `tenonwright open stool`: makes the living plan of a design and shows it. */
export const open: Command<typeof options> = {
  name: 'open',
  summary: 'make a page to change the sizes in, and show it in your browser',
  about: 'model and parameters',
  parameters: z.object(options),
  async act(given, call) {
    const { around } = call;
    const result = await runPipeline('makeDesign', { ...given, json: false, only: 'living' }, call);
    showResult(result, { ...given, json: false }, around);
    const page = result.files.find(({ path }) => path.endsWith('.html'));
    if (page && given.browser && !(await (around.showInBrowser ?? showInBrowser)(page.path)))
      around.err.write(`No browser could be started: open ${page.path} in yours.\n`);
    else if (page && !given.quiet)
      around.out.write(
        `\n${given.browser ? 'Shown in your browser' : 'Open it in a browser'}: ${page.path}\n`,
      );
    return result.findings.some(({ level }) => level === 'error') ? FAILED_CHECKS : DONE;
  },
};
