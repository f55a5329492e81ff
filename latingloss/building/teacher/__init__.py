"""The teacher: a log-linear model whose signs of agreement and government grammar names, so that little gold suffices.

It reads the verses for the network to learn from; see `building.chooser`. It is not shipped.
"""
