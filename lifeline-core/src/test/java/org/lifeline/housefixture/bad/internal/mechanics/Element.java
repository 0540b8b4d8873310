package org.lifeline.housefixture.bad.internal.mechanics;

/** An internal type. */
public class Element implements Hidden {}
