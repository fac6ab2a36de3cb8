import { photoRead } from '#core/contract/photo.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { photoWords as words } from '#renderer/words/photoWords.ts';
import './photos.css';

export type ThumbPhoto = { photoId: number; struck?: boolean };

/** Photos as small pictures, each a key that shows it large. */
export const Thumbs = ({
  photos,
  of,
  shown = null,
  onShow,
}: {
  photos: readonly ThumbPhoto[];
  /** what they show: "crack, at the weld toe" */
  of: string;
  shown?: number | null;
  onShow: (photoId: number) => void;
}) => (
  <ul className="thumbs">
    {photos.map(({ photoId, struck = false }, place) => (
      <li key={photoId}>
        <button
          type="button"
          className={struck ? 'thumb struck' : 'thumb'}
          aria-label={words.show(place + 1, photos.length, of, struck)}
          aria-pressed={shown === photoId}
          onClick={() => onShow(photoId)}
        >
          <Photo photoId={photoId} alt="" />
          {struck && (
            <svg viewBox="0 0 64 48" preserveAspectRatio="none" aria-hidden="true">
              <path d="M0 0L64 48M64 0L0 48" />
            </svg>
          )}
        </button>
      </li>
    ))}
  </ul>
);

/** A photo out of the record; while it is fetched its place stands empty. */
export function Photo({ photoId, alt }: { photoId: number; alt: string }) {
  const photo = useAsk(photoRead, { photoId });
  if (!photo.value) return <span className="no-photo">{photo.fault ? words.gone : ''}</span>;
  const { jpegBase64, widthPx, heightPx } = photo.value;
  return <img src={`data:image/jpeg;base64,${jpegBase64}`} width={widthPx} height={heightPx} alt={alt} />;
}
