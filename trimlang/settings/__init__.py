"""The settings of a job and of a room, one row each: see ``trimlang.settings.table``."""
