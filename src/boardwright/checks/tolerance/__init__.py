"""Fits as the shop cuts them: the errors that meet in each, and the share of builds that bind or rattle."""
