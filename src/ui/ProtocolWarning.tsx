import { ShapeMark } from "./ShapeMark.tsx";

/** That nobody has approved the protocol for patients; nothing where its owner has. */
export function ProtocolWarning({ text }: { readonly text: string }) {
  if (text === "") return null;
  return (
    <p className="protocol-warning">
      <ShapeMark shape="bars3" />
      {text}
    </p>
  );
}
