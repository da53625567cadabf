"""The settings of a job or a room, one row each: see ``trimlang.settings.table``."""
