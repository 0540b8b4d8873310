package org.lifeline.housefixture.bad.analysis;

/** Leaks what its parent hands down. */
public final class Heir extends HiddenParent {}
