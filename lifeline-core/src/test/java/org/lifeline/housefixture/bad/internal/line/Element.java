package org.lifeline.housefixture.bad.internal.line;

/** An internal type. */
public class Element implements Hidden {}
