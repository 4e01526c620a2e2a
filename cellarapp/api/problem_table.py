"""Every kind of problem: its status, what it is called and what to do about it.

The one table behind every problem that is sent and every page at /problems/<slug>. Clients branch
on the slug, so a slug once given stays.
"""

from typing import NamedTuple


class Kind(NamedTuple):
    """One kind of problem. `status` is what an answer carries that consists of nothing else."""

    status: int
    title: str
    advice: str


TABLE: dict[str, Kind] = {
    "another-ledger": Kind(
        409,
        "The server has another ledger",
        "The server was restored or set up anew since this device last asked. Take a new snapshot "
        "and offer again what was sent lately; nothing that waits on the device is lost.",
    ),
    "busy": Kind(
        503,
        "The server is busy",
        "Another write is taking long. Nothing was changed; the device tries again by itself.",
    ),
    "damaged": Kind(
        503,
        "The server's database is damaged",
        "Stop the server, put back the newest backup (cellarapp restore) and start it again. The "
        "device keeps its entries and sends them then, with what the backup lacks.",
    ),
    "disk-full": Kind(
        503,
        "The server has no room left on its disk",
        "Make room on the server's disk. Nothing was changed; the device keeps its entries and "
        "tries again by itself.",
    ),
    "cannot-label": Kind(
        422,
        "Something is missing for the label",
        "What has to stand on the label is not on record yet; enter what is named and ask again.",
    ),
    "cannot-tell": Kind(
        422,
        "Something is missing for the events",
        "What the events need is not on record yet; enter what is named and ask again.",
    ),
    "cannot-take": Kind(
        409,
        "It cannot be taken in",
        "It is held for a reason that an owner's word does not do away with. It can be put aside.",
    ),
    "cross-site": Kind(
        403,
        "Asked for from elsewhere",
        "Only the app's own pages may change anything. Open the app and try again.",
    ),
    "last-owner": Kind(
        409, "There must be an owner", "Make somebody else an owner first; one has to remain."
    ),
    "link-spent": Kind(
        410,
        "The link works no more",
        "A link works once, and for ten minutes where it is for a device. Ask an owner for another "
        "one.",
    ),
    "malformed-entry": Kind(
        422,
        "An entry cannot be read",
        "The entry stays on the device. Put right what is named and send it again.",
    ),
    "malformed-request": Kind(
        422,
        "The request cannot be read",
        "Something in the request is not as the interface asks for; each fault is named.",
    ),
    "method-not-allowed": Kind(
        405, "Not done this way", "The address is there, but not for this method."
    ),
    "name-taken": Kind(
        409,
        "The name is taken",
        "Entries carry names, so a name is given once and never again. Choose another one.",
    ),
    "no-length": Kind(
        411, "The body does not say how long it is", "Send the body whole, with Content-Length."
    ),
    "not-a-date": Kind(422, "Not a date", "Write a date as year-month-day, such as 2026-11-25."),
    "not-a-number": Kind(
        422,
        "Not a container's number",
        "A number has one to eight letters and digits, at least one of them a digit.",
    ),
    "not-a-time": Kind(422, "Not a time", "Write a time as 2026-11-25T09:40:00.000Z."),
    "not-among": Kind(422, "Not one of the answers", "Choose one of the answers that are named."),
    "not-an-asset-number": Kind(
        422,
        "Not an asset number",
        "A GRAI is 14 digits, the last of them a check digit, and the container's number. The "
        "company prefix is the one GS1 gave, short enough to leave room for the kind of container.",
    ),
    "not-found": Kind(404, "Nothing here", "Check the address, or the number of the container."),
    "not-json": Kind(
        400,
        "The body is not JSON",
        "The body was cut off or damaged on its way, or is not JSON in UTF-8. Send it again.",
    ),
    "not-paired": Kind(
        401,
        "This device is not signed in",
        "Sign in, or ask an owner for a link. Everything that waits on the device stays there.",
    ),
    "not-possible": Kind(422, "Not possible", "The rules have no answer for what was given."),
    "not-ready": Kind(
        503,
        "The server cannot do its work now",
        "What is wrong is named. Devices keep their entries and try again by themselves.",
    ),
    "not-secure": Kind(
        403,
        "Not over this connection",
        "A device can be signed in only over https, or on the server itself.",
    ),
    "not-set-up": Kind(
        401,
        "Nobody is here yet",
        "Open the link that the server printed when it was started, or have it print another one "
        "with `cellarapp invite`.",
    ),
    "other-content": Kind(
        409,
        "The id is taken by another entry",
        "Two entries carry one id. The later one is kept aside, at the office, for a person to "
        "look at; nothing has to be done on the device.",
    ),
    "out-of-range": Kind(
        422, "Beyond what can be worked out", "Give a figure within the limits that are named."
    ),
    "own-fault": Kind(
        500,
        "The server made a mistake",
        "The fault is the server's and is in its log under the incident's name. What was sent is "
        "kept, here or on the device, and is tried again.",
    ),
    "sheet-not-readable": Kind(
        422,
        "The file is not such a list",
        "Send CSV or a workbook (.xlsx) whose first row holds the headings that are named.",
    ),
    "put-aside": Kind(
        409,
        "An owner has put it aside",
        "The entry is kept and does not count. Nothing has to be done on the device.",
    ),
    "revoked": Kind(
        401,
        "This device was revoked",
        "An owner has taken it out of use. What is recorded on it can still be sent and is held "
        "for an owner to decide.",
    ),
    "revoked-device": Kind(
        403,
        "From a device that was revoked",
        "The entry is kept for an owner to decide. Nothing has to be done on the device.",
    ),
    "rights": Kind(
        403,
        "Not theirs to record",
        "The entry is kept for an owner to decide. Nothing has to be done on the device.",
    ),
    "role": Kind(403, "This is for an owner", "Hand the device to an owner, or ask one."),
    "step-up-needed": Kind(
        403, "The passphrase is needed once more", "Give the passphrase, then try again."
    ),
    "storage-trouble": Kind(
        503,
        "The server cannot reach its database",
        "Look whether the server's disk or its database has failed. Nothing was changed; "
        "the device keeps its entries and tries again by itself.",
    ),
    "too-large": Kind(
        413,
        "Too much at once",
        "Send at most 500 entries and 1 MiB at once, in several requests if need be.",
    ),
    "too-many-tries": Kind(429, "Tried too often", "Wait a little, then try again."),
    "unknown-encoding": Kind(
        415,
        "The body's encoding is not known",
        "Send the body as application/json, plain or compressed with gzip.",
    ),
    "unknown-kind": Kind(
        422,
        "The server does not know this kind of entry",
        "The device is newer than the server. The entry is kept and taken in once the server is "
        "updated; nothing has to be done on the device.",
    ),
    "wrong-passphrase": Kind(
        403,
        "Name and passphrase do not go together",
        "Try again. Whoever has forgotten it asks an owner for a new one.",
    ),
    "wrong-pin": Kind(
        403,
        "Name and PIN do not go together",
        "Try again. Whoever has forgotten it asks an owner for a new one.",
    ),
}
