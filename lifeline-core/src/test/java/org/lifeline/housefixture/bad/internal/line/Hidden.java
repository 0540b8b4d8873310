package org.lifeline.housefixture.bad.internal.line;

/** An internal interface. */
public interface Hidden {}
