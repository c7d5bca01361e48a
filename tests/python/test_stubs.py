"""The committed stubs say what the module has; mypy's stubtest, which knows more, runs in bindings/stubs/run.sh."""

import ast
import re
from pathlib import Path

import pytest

import libtexture as lt
from libtexture import _core

STUB = ast.parse((Path(__file__).parents[2] / "bindings" / "libtexture" / "_core.pyi").read_text())
CLASSES = {node.name: node for node in STUB.body if isinstance(node, ast.ClassDef)}
FUNCTIONS = {node.name: node for node in STUB.body if isinstance(node, ast.FunctionDef)}
OF_PYBIND11 = re.compile(
    r"__(module|doc|dict|weakref|new|abstractmethods|static_attributes|firstlineno)__|_pybind11_conduit_v1_"
)
ADVICE = "the stubs are old: sh bindings/stubs/run.sh build/<preset> writes them anew"


def parameters_of_stub(node):
    given = node.args
    return [one.arg for one in (*given.posonlyargs, *given.args, *given.kwonlyargs)]


def parameters_of_doc(callable_):
    """Names of the parameters in the signature that a doc string begins with."""
    signature = callable_.__doc__.splitlines()[0]
    inside = signature[signature.index("(") + 1 : signature.rindex(")")]
    while (flat := re.sub(r"\[[^\[\]]*\]|\([^()]*\)|\{[^{}]*\}|'[^']*'", "", inside)) != inside:
        inside = flat
    names = [re.match(r"\s*([*\w]*)", part)[1] for part in inside.split(",")]
    return [name for name in names if name and not name.startswith("*")]


def test_the_stub_has_the_names_of_the_module():
    classes = {name for name in lt.__all__ if isinstance(getattr(_core, name, None), type)}
    functions = {
        name
        for name in dir(_core)
        if type(getattr(_core, name)).__name__ in ("builtin_function_or_method", "PyCapsule")
    }
    assert set(CLASSES) == classes, ADVICE
    assert set(FUNCTIONS) == {name for name in functions if not name.startswith("__")}, ADVICE


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_a_function_has_the_parameters_of_its_stub(name):
    assert parameters_of_stub(FUNCTIONS[name]) == parameters_of_doc(getattr(_core, name)), ADVICE


def test_progress_has_one_type_whoever_takes_it():
    keywords = [one for node in FUNCTIONS.values() for one in node.args.kwonlyargs]
    types = {ast.unparse(one.annotation) for one in keywords if one.arg == "progress"}
    assert types == {"bool | collections.abc.Callable[[float], object] | None"}


@pytest.mark.parametrize("name", sorted(CLASSES))
def test_a_class_has_the_members_of_its_stub(name):
    cls = getattr(_core, name)
    members = [node for node in CLASSES[name].body if isinstance(node, ast.FunctionDef)]
    stated = {node.name for node in members}
    own = {one for one in vars(cls) if not OF_PYBIND11.fullmatch(one)} - {"__hash__"}
    if cls.__init__.__doc__.startswith("Initialize self"):
        own.discard("__init__")  # pybind11's answer that there is none
    assert own == stated, ADVICE
    for node in members:
        is_property = isinstance(vars(cls)[node.name], property)
        if not is_property and not node.name.startswith("__"):
            assert parameters_of_stub(node) == parameters_of_doc(getattr(cls, node.name)), f"{node.name}: {ADVICE}"
        if node.name == "__init__":
            expected = parameters_of_doc(cls.__init__)
            assert parameters_of_stub(node) == expected, ADVICE
