import type { ChangeEvent } from "react";
import { useState } from "react";
import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { ShapeMark } from "./ShapeMark.tsx";

type Notice = ScreenView["protocolNotice"];

function NoticeText({ notice }: { readonly notice: NonNullable<Notice> }) {
  const isRefused = notice.kind === "refused";
  return (
    <div className={isRefused ? "protocol-notice protocol-refused" : "protocol-notice"}>
      <p>
        <ShapeMark shape={isRefused ? "cross" : "tick"} />
        {notice.text}
      </p>
      {notice.errors.length > 0 && (
        <ul>
          {notice.errors.map((error, i) => (
            <li key={i}>{error}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

type FilesProps = { readonly notice: Notice; readonly actions: ScreenActions };

/** Another protocol from files, and back to the bundled one. What came of it is announced. */
export function ProtocolFiles({ notice, actions }: FilesProps) {
  const [unreadable, setUnreadable] = useState(false);
  const choose = async ({ currentTarget: input }: ChangeEvent<HTMLInputElement>) => {
    const files = [...(input.files ?? [])];
    if (files.length === 0) return;
    try {
      const read = files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }));
      const chosen = await Promise.all(read);
      setUnreadable(false);
      actions.loadProtocol(chosen);
    } catch {
      setUnreadable(true);
    }
    input.value = ""; // the same file, mended, may be chosen again
  };
  return (
    <section className="protocol-files" aria-labelledby="protocol-files">
      <h3 id="protocol-files">Another protocol</h3>
      <p>
        Choose a protocol file (JSON). Where it is signed, choose its signature and its owner’s public key (PEM)
        together with it. A file with an error changes nothing.
      </p>
      <div className="protocol-buttons">
        <label className="protocol-choose">
          <span>Choose files</span>
          <input type="file" multiple onChange={(event) => void choose(event)} />
        </label>
        <button type="button" onClick={() => actions.forgetProtocol()}>
          Use the bundled example again
        </button>
      </div>
      <div role="status">
        {unreadable && <p className="protocol-notice protocol-refused">The files could not be read.</p>}
        {!unreadable && notice !== undefined && <NoticeText notice={notice} />}
      </div>
    </section>
  );
}
