/** Pictures as the file dialog asks for them; some browsers do not count those of telephones among images. */
export const PICTURE_KINDS = 'image/*,.heic,.heif';
