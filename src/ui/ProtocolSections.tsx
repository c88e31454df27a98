import type { PageSection } from "../app/view/protocolPageTypes.ts";
import { ProtocolTable } from "./ProtocolTable.tsx";

const idOf = (...keys: readonly (string | number)[]): string => ["protocol", ...keys].join("-");

function Section({ section: { key, title, tables } }: { readonly section: PageSection }) {
  return (
    <section className="protocol-section" aria-labelledby={idOf(key)}>
      <h3 id={idOf(key)}>{title}</h3>
      {tables.map((table, i) => {
        const isNamed = table.title !== title;
        const id = isNamed ? idOf(key, i) : idOf(key);
        return (
          <div key={table.key} className="protocol-block">
            {isNamed && <h4 id={id}>{table.title}</h4>}
            <ProtocolTable table={table} labelledBy={id} />
          </div>
        );
      })}
    </section>
  );
}

/** The sections, with a list of them in front to jump from. */
export function ProtocolSections({ sections }: { readonly sections: readonly PageSection[] }) {
  return (
    <>
      <nav className="protocol-contents" aria-label="Contents of the protocol">
        <ul>
          {sections.map(({ key, title }) => (
            <li key={key}>
              <a href={`#${idOf(key)}`}>{title}</a>
            </li>
          ))}
        </ul>
      </nav>
      {sections.map((section) => (
        <Section key={section.key} section={section} />
      ))}
    </>
  );
}
