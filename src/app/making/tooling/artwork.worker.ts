import { decodePicture } from '../../../artwork/picture/decodePicture.ts';
import { type ArtworkFile, type PictureUse, type ReadArtwork, readArtwork } from '../../../artwork/readArtwork.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';

export interface ArtworkQuestion {
  readonly file: ArtworkFile;
  readonly use: PictureUse;
}

serveQuestions<ArtworkQuestion, ReadArtwork>(({ file, use }) => readArtwork(file, decodePicture, use));
