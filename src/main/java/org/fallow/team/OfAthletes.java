package org.fallow.team;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.security.access.prepost.PreAuthorize;

/**
 * Lets only somebody who may see every athlete of the collection that is the first
 * argument call a method.
 */
@Target({ ElementType.METHOD, ElementType.TYPE })
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("@athleteAccess.maySeeAll(#a0)")
public @interface OfAthletes {

}
