"""Reads the /// comments of C++ headers and writes them as a table of {name, text} for bindings/docs.hpp.

    doc_strings.py OUT.inc HEADER...

A comment belongs to the declaration below it (///) or on its left (///<). Names are qualified below the namespace:
"Motion", "Motion::force_n", "synthesize". Overloads share one entry, their texts in order.
"""

import re
import sys

SCOPE = re.compile(r"^(?:template\s*<.*>\s*)?(namespace|struct|class|enum(?:\s+class)?)\s+([\w:]+)[^;]*\{")
NAME = re.compile(r"([A-Za-z_]\w*)\s*(?:\(|=|;|\{|,|$)")


def declared_name(code):
    """The name that a line of code declares, or None."""
    scope = SCOPE.match(code)
    if scope:
        return scope[2]
    code = re.sub(r"<[^()]*?>(?=[\s&*>])", "", code)  # template arguments hold commas
    if "operator" in code:
        return None
    name = NAME.search(code)
    return name[1] if name else None


def read_docs(text):
    """Pairs of (qualified name, comment) of one header."""
    scopes = []  # one per open brace: a name, or None for a body
    pending = []
    statement = ""  # what has been read of a declaration that goes on in the next line
    last = None  # the name whose ///< comment may go on in the next line
    for line in text.splitlines():
        line = line.strip()
        if line.startswith("///<"):
            yield last, line[4:].strip()
            continue
        if line.startswith("///"):
            pending.append(line[3:].strip())
            continue
        code, _, trailing = line.partition("///<")
        code = re.sub(r"//.*", "", code).strip()
        code = re.sub(r'"(?:\\.|[^"\\])*"', '""', code)
        if not code:
            pending = []
            continue
        if re.fullmatch(r"template\s*<.*>", code):
            continue  # the declaration is on the next line
        is_declaration = all(scopes)
        scope = SCOPE.match(code)
        named = [name for name in scopes if name and name != "libtexture"]
        if is_declaration:
            if not statement:
                name = declared_name(code)
                last = "::".join([*named, name]) if name else None
            statement += code
            comment = "\n".join(pending) or trailing.strip()
            if last and comment:
                yield last, comment
        is_ended = code[-1] in ";{}:" or code[-1] == "," and statement.count("(") == statement.count(")")
        if is_ended:
            statement = ""
        pending = []
        opened = scope[2] if scope else None
        for brace in re.findall(r"[{}]", code):
            if brace == "{":
                scopes.append(opened)
                opened = None
            elif scopes:
                scopes.pop()


def quoted(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


def main(out, headers):
    docs = {}
    for header in headers:
        with open(header, encoding="utf-8") as file:
            for name, comment in read_docs(file.read()):
                docs.setdefault(name, []).append(comment)
    with open(out, "w", encoding="utf-8") as file:
        for name, comments in sorted(docs.items()):
            file.write(f"{{{quoted(name)}, {quoted(chr(10).join(comments))}}},\n")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
