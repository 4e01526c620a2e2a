"""What storage raises; errors of the database itself never leave this folder.

StorageError
├── StorageBusy      another write took too long; trying again later will do
└── StorageTrouble   the database cannot be read or written now: connection lost, disk gone
    ├── StorageFull      there is no room left for it
    └── StorageDamaged   its file is not what was written

A mistake of ours in a statement is none of these and leaves as it is.
"""


class StorageError(Exception):
    """The database did not do what was asked; nothing was changed."""


class StorageBusy(StorageError):
    """Another write held the database for longer than we wait."""


class StorageTrouble(StorageError):
    """The database cannot be read or written at the moment."""


class StorageFull(StorageTrouble):
    """There is no room left to write."""


class StorageDamaged(StorageTrouble):
    """The file is damaged, or is no database at all; a backup has to take its place."""
