package org.fallow.team;

import org.springframework.context.annotation.Configuration;
import org.springframework.security.config.annotation.method.configuration.EnableMethodSecurity;

/**
 * Makes {@link OfAthlete} and its kin be asked before a module's method runs.
 */
@Configuration(proxyBeanMethods = false)
@EnableMethodSecurity
class AccessChecks {

}
