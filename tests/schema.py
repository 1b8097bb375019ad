"""schema.py SCHEMA DOCUMENT -- is a document [RFC 8259] as a JSON Schema [draft 2020-12] has it? Only the keywords that the
program's own schemas use are known; another one in a schema is a mistake in it. Every fault is printed with its place."""
import json
import sys

TYPES = {
    "object": lambda x: isinstance(x, dict),
    "array": lambda x: isinstance(x, list),
    "string": lambda x: isinstance(x, str),
    "boolean": lambda x: isinstance(x, bool),
    "number": lambda x: isinstance(x, (int, float)) and not isinstance(x, bool),
    "integer": lambda x: isinstance(x, (int, float)) and not isinstance(x, bool) and x == int(x),
    "null": lambda x: x is None,
}
KNOWN = {"$schema", "title", "description", "type", "enum", "items", "anyOf", "properties", "required", "additionalProperties"}


def of_object(schema, x, at):
    properties = schema.get("properties", {})
    others = schema.get("additionalProperties", True)
    for key in schema.get("required", []):
        if key not in x:
            yield f"{at}: '{key}' is missing"
    for key, value in x.items():
        if key in properties:
            yield from faults(properties[key], value, f"{at}.{key}")
        elif others is False:
            yield f"{at}: '{key}' is not known"
        elif others is not True:
            yield from faults(others, value, f"{at}.{key}")


def faults(schema, x, at):
    strange = set(schema) - KNOWN
    if strange:
        yield f"{at}: the schema has {sorted(strange)}"
    types = schema.get("type", [])
    types = [types] if isinstance(types, str) else types
    if types and not any(TYPES[t](x) for t in types):
        yield f"{at}: is no {' or '.join(types)}"
        return
    if "enum" in schema and x not in schema["enum"]:
        yield f"{at}: {x!r} is none of {schema['enum']}"
    if "anyOf" in schema:
        choices = [list(faults(s, x, at)) for s in schema["anyOf"]]
        if all(choices):
            yield from min(choices, key=len)
    if isinstance(x, dict):
        yield from of_object(schema, x, at)
    if isinstance(x, list):
        for i, item in enumerate(x):
            yield from faults(schema.get("items", {}), item, f"{at}[{i}]")


def once(pairs):
    keys = [key for key, _ in pairs]
    if len(keys) != len(set(keys)):
        raise ValueError(f"a key stands twice: {keys}")
    return dict(pairs)


def no_number(text):
    raise ValueError(f"{text} is no JSON")


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file, object_pairs_hook=once, parse_constant=no_number)


if __name__ == "__main__":
    found = list(faults(read(sys.argv[1]), read(sys.argv[2]), "$"))
    print("\n".join(found))
    sys.exit(1 if found else 0)
