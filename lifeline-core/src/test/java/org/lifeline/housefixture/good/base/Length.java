package org.lifeline.housefixture.good.base;

/** A floor that others stand on. */
public record Length(double metres) {}
