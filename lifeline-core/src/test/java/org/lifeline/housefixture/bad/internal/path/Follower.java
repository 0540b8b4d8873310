package org.lifeline.housefixture.bad.internal.path;

/** What follows a change. */
public class Follower {}
