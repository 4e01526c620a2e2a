"""The blueprint that every resource uses: says in one place what a view reads and answers.

flask-smorest has no types; all of it that the views need passes through here.
"""

from collections.abc import Callable
from http import HTTPStatus
from typing import Any, TypeVar, cast

from flask_smorest import Blueprint as SmorestBlueprint  # type: ignore[import-untyped]
from marshmallow import Schema

from cellarapp.api.bodies import FILE_TYPE
from cellarapp.api.parsing import Parser

View = TypeVar("View", bound=Callable[..., Any])


class Blueprint(SmorestBlueprint):  # type: ignore[misc]
    """Reads requests by our parser and documents problems by their status."""

    ARGUMENTS_PARSER = Parser()

    def at(self, method: str, path: str) -> Callable[[View], View]:
        """The address of a view."""
        return cast(Callable[[View], View], self.route(path, methods=[method]))

    def reads_body(self, form: type[Schema], description: str) -> Callable[[View], View]:
        """What the body of a request holds; given to the view."""
        reading = self.arguments(form, description=description)
        return cast(Callable[[View], View], reading)

    def reads_file(self, description: str) -> Callable[[View], View]:
        """The body of a request is a file of some other program, which the view reads itself."""
        content = {FILE_TYPE: {"schema": {"type": "string", "format": "binary"}}}
        described = self.doc(requestBody={"description": description, "content": content})
        return cast(Callable[[View], View], described)

    def reads_query(self, form: type[Schema]) -> Callable[[View], View]:
        """What the query of an address holds; given to the view."""
        return cast(Callable[[View], View], self.arguments(form, location="query"))

    def answers(self, shape: type[Schema], *problems: int) -> Callable[[View], View]:
        """What the view answers with, and the statuses of the problems it may meet."""

        def decorate(view: View) -> View:
            return self._fails(cast(View, self.response(200, shape)(view)), problems)

        return decorate

    def gives_file(
        self, content_type: str, description: str, *problems: int
    ) -> Callable[[View], View]:
        """The view answers with a file of some other program, or meets these problems."""

        def decorate(view: View) -> View:
            shape = {"type": "string", "format": "binary"}
            given = self.alt_response(
                200, schema=shape, description=description, content_type=content_type, success=True
            )
            return self._fails(cast(View, given(view)), problems)

        return decorate

    def answers_nothing(self, *problems: int) -> Callable[[View], View]:
        """That the view answers with no body, and the statuses of the problems it may meet."""

        def decorate(view: View) -> View:
            return self._fails(cast(View, self.response(204)(view)), problems)

        return decorate

    def _fails(self, view: View, problems: tuple[int, ...]) -> View:
        for status in problems:
            view = cast(View, self.alt_response(status, HTTPStatus(status).name)(view))
        return view
