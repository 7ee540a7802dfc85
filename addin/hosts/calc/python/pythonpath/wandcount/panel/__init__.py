"""The side pane: a view drawn with controls of the office."""
