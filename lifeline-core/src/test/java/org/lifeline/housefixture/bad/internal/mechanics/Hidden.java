package org.lifeline.housefixture.bad.internal.mechanics;

/** An internal interface. */
public interface Hidden {}
