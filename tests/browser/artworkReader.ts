// The entry that artwork.spec.ts builds: the page's own reader of drawings, under a name that a test can call.
import { openArtwork } from '../../src/app/worker/openArtwork.ts';

Object.assign(window, { openArtwork });
