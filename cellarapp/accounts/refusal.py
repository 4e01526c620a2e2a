"""What accounts refuses, for the API to put into words and a status."""


class Refusal(Exception):
    """Something is not allowed or not possible. What `slug` means is in api/problem_table.py.

    Args:
        slug: which kind of problem.
        detail: in words that the person can act on; those of the table where it is left out.
        field: of the request, when one is to blame.
    """

    def __init__(self, slug: str, detail: str = "", *, field: str = "") -> None:
        super().__init__(f"{slug}: {detail}")
        self.slug, self.detail, self.field = slug, detail, field
