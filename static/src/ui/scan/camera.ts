// The phone's camera as a row of pictures, until it is stopped.

/** Why there are no pictures, in words. */
export class NoCamera extends Error {
  override readonly name = "NoCamera";
}

const NONE = "This phone has no camera that the app can use. Type the number instead.";
const REFUSED =
  "The app may not use the camera. Allow it in the phone's settings, or type the number.";
const UNSAFE = "The camera needs an address that begins with https. Type the number instead.";

const whyNot = (fault: unknown): string =>
  fault instanceof DOMException && fault.name === "NotAllowedError" ? REFUSED : NONE;

/** The camera at the back. Rejects with NoCamera. */
export const openCamera = async (): Promise<MediaStream> => {
  if (!isSecureContext) throw new NoCamera(UNSAFE);
  try {
    return await navigator.mediaDevices.getUserMedia({
      video: { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 720 } },
    });
  } catch (cause) {
    throw new NoCamera(whyNot(cause), { cause });
  }
};

export const closeCamera = (stream: MediaStream): void => {
  for (const track of stream.getTracks()) track.stop();
};

/** The middle of what the camera sees now; null until it sees anything. */
export const pictureOf = (video: HTMLVideoElement, canvas: HTMLCanvasElement): ImageData | null => {
  const { videoWidth, videoHeight } = video;
  if (videoWidth === 0) return null;
  const side = Math.min(videoWidth, videoHeight);
  canvas.width = side;
  canvas.height = side;
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (context === null) return null;
  const [x, y] = [(videoWidth - side) / 2, (videoHeight - side) / 2];
  context.drawImage(video, x, y, side, side, 0, 0, side, side);
  return context.getImageData(0, 0, side, side);
};
