"""Panels under a lamp: a scene in, a picture and the mask of each defect out. Plain Python, numpy and Pillow."""
