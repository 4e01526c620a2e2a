"""What an EPCIS 2.0 document has to be, as far as ours go, as a JSON schema of our own.

Written from the shapes and vocabularies of EPCIS 2.0.1 and CBV 2.0 (ref.gs1.org/standards/epcis and
/cbv): which members each event needs, which words there are, and that anything else is an address.
"""

from typing import Any

STEPS = [
    "accepting",
    "arriving",
    "assembling",
    "collecting",
    "commissioning",
    "consigning",
    "creating_class_instance",
    "cycle_counting",
    "decommissioning",
    "departing",
    "destroying",
    "disassembling",
    "dispensing",
    "encoding",
    "entering_exiting",
    "holding",
    "inspecting",
    "installing",
    "killing",
    "loading",
    "other",
    "packing",
    "picking",
    "receiving",
    "removing",
    "repackaging",
    "repairing",
    "replacing",
    "reserving",
    "retail_selling",
    "shipping",
    "staging_outbound",
    "stock_taking",
    "stocking",
    "storing",
    "transporting",
    "unloading",
    "unpacking",
    "void_shipping",
    "sensor_reporting",
    "sampling",
]
DISPOSITIONS = [
    "active",
    "container_closed",
    "damaged",
    "destroyed",
    "dispensed",
    "disposed",
    "encoded",
    "expired",
    "in_progress",
    "in_transit",
    "inactive",
    "no_pedigree_match",
    "non_sellable_other",
    "partially_dispensed",
    "recalled",
    "reserved",
    "retail_sold",
    "returned",
    "sellable_accessible",
    "sellable_not_accessible",
    "stolen",
    "unknown",
    "available",
    "completeness_verified",
    "completeness_inferred",
    "conformant",
    "container_open",
    "mismatch_instance",
    "mismatch_class",
    "mismatch_quantity",
    "needs_replacement",
    "non_conformant",
    "unavailable",
]
URI = {"type": "string", "pattern": r"^(https?://|urn:)[^\s]+$"}
TIME = {
    "type": "string",
    "pattern": r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$",
}


def word_of(words: list[str]) -> dict[str, Any]:
    return {"anyOf": [{"enum": words}, {**URI, "pattern": "^https?://"}]}


def party(name: str) -> dict[str, Any]:
    kinds = {"enum": ["owning_party", "possessing_party", "location"]}
    return {
        "type": "array",
        "minItems": 1,
        "items": {"required": ["type", name], "properties": {"type": kinds, name: URI}},
    }


ID = {
    "type": "object",
    "required": ["id"],
    "properties": {"id": URI},
    "additionalProperties": False,
}
COMMON = {
    "type": True,
    "eventID": {
        "type": "string",
        "pattern": r"^urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$",
    },
    "eventTime": TIME,
    "eventTimeZoneOffset": {"type": "string", "pattern": r"^[+-](0\d|1[0-4]):[0-5]\d$"},
    "action": {"enum": ["ADD", "OBSERVE", "DELETE"]},
    "bizStep": word_of(STEPS),
    "disposition": word_of(DISPOSITIONS),
    "readPoint": ID,
    "bizLocation": ID,
    "sourceList": party("source"),
    "destinationList": party("destination"),
    "errorDeclaration": {
        "type": "object",
        "required": ["declarationTime", "reason"],
        "properties": {
            "declarationTime": TIME,
            "reason": {"enum": ["did_not_occur", "incorrect_data"]},
            "correctiveEventIDs": {"type": "array", "minItems": 1, "items": URI},
        },
        "additionalProperties": False,
    },
}
QUANTITIES = {
    "type": "array",
    "minItems": 1,
    "items": {
        "required": ["epcClass", "quantity"],
        "properties": {
            "epcClass": URI,
            "quantity": {"type": "number"},
            "uom": {"enum": ["LTR", "KGM"]},  # UN/ECE Recommendation 20
        },
        "additionalProperties": False,
    },
}
ALWAYS = ["type", "eventTime", "eventTimeZoneOffset", "action"]


def event(kind: str, needs: list[str], own: dict[str, Any]) -> dict[str, Any]:
    return {
        "if": {"properties": {"type": {"const": kind}}},
        "then": {
            "required": [*ALWAYS, *needs],
            "properties": COMMON | own,
            "additionalProperties": False,
        },
    }


EVENT = {
    "type": "object",
    "properties": {"type": {"enum": ["ObjectEvent", "AssociationEvent"]}},
    "required": ["type"],
    "allOf": [
        event("ObjectEvent", ["epcList"], {"epcList": {"type": "array", "items": URI}}),
        event("AssociationEvent", ["parentID"], {"parentID": URI, "childQuantityList": QUANTITIES}),
        {  # children may be left out only where all of them go
            "if": {
                "properties": {"type": {"const": "AssociationEvent"}, "action": {"const": "ADD"}}
            },
            "then": {"required": ["childQuantityList"]},
        },
    ],
}
DOCUMENT = {
    "type": "object",
    "required": ["@context", "type", "schemaVersion", "creationDate", "epcisBody"],
    "properties": {
        "@context": {"type": "array", "minItems": 1},
        "type": {"const": "EPCISDocument"},
        "schemaVersion": {"type": "string", "pattern": r"^\d+\.\d+(\.\d+)?$"},
        "creationDate": TIME,
        "epcisBody": {
            "required": ["eventList"],
            "properties": {"eventList": {"type": "array", "items": EVENT}},
            "additionalProperties": False,
        },
    },
    "additionalProperties": False,
}
