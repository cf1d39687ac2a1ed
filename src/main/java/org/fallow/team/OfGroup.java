package org.fallow.team;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.security.access.prepost.PreAuthorize;

/**
 * Lets only the athletes and coaches of the team whose group the first argument names
 * call a method. The order of the arguments is part of the promise: the group comes
 * first.
 */
@Target({ ElementType.METHOD, ElementType.TYPE })
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("@athleteAccess.maySeeGroup(#a0)")
public @interface OfGroup {

}
