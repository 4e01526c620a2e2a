"""Properties take the time they take: a busy machine is no fault of the rules."""

from hypothesis import settings

settings.register_profile(
    "patient", settings.get_profile(settings.get_current_profile_name()), deadline=None
)
settings.load_profile("patient")
