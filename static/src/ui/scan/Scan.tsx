// Scanning in place of the pad's digits, one plate after another; the big button stays where it is.

import { useEffect, useRef, useState } from "preact/hooks";
import { DomainError } from "../../domain/errors.ts";
import { scannedNumber } from "../../domain/scanned.ts";
import { closeCamera, NoCamera, openCamera, pictureOf } from "./camera.ts";
import { decode } from "./decode.ts";

/** Between two pictures: an old phone must have time for its screen too. */
const PAUSE_MS = 120;

export interface ScanProps {
  onNumber: (number: string) => void;
}

const Scan = ({ onNumber }: ScanProps) => {
  const video = useRef<HTMLVideoElement>(null);
  const [says, setSays] = useState("Hold the plate's code before the camera.");
  const latest = useRef(onNumber);
  latest.current = onNumber;

  useEffect(() => {
    const ended = new AbortController();
    look(video.current, ended.signal, (text) => {
      try {
        latest.current(scannedNumber(text));
        navigator.vibrate?.(40);
        setSays("Hold the next one before the camera.");
      } catch (fault) {
        if (!(fault instanceof DomainError)) throw fault;
        setSays("That code is on no container's plate.");
      }
    }).catch((fault: unknown) => {
      setSays(fault instanceof NoCamera ? fault.message : "The camera has stopped.");
      if (!(fault instanceof NoCamera)) throw fault;
    });
    return () => ended.abort();
  }, []);

  return (
    <div class="camera">
      <video ref={video} muted playsInline aria-label="What the camera sees" />
      <p role="status">{says}</p>
    </div>
  );
};

/** Looks until it is ended. A code that stays in view is told once. */
const look = async (
  video: HTMLVideoElement | null,
  ended: AbortSignal,
  onCode: (text: string) => void,
): Promise<void> => {
  if (video === null) return;
  const stream = await openCamera();
  if (ended.aborted) return closeCamera(stream);
  ended.addEventListener("abort", () => closeCamera(stream), { once: true });
  video.srcObject = stream;
  await video.play();
  const canvas = document.createElement("canvas");
  let last: string | null = null;
  while (!ended.aborted) {
    const picture = pictureOf(video, canvas);
    const text = picture === null ? null : await decode(picture);
    if (text !== null && text !== last && !ended.aborted) {
      last = text;
      onCode(text);
    }
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
};

export default Scan;
