package org.fallow.platform;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Set;

import javax.sql.DataSource;

import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;

import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Looks before and after the migrations: at a schema that a newer Fallow made, or whose
 * history is another one, nothing is touched; and the role that pages work as must be
 * bound by the rights and policies that the migrations give it.
 */
@Configuration(proxyBeanMethods = false)
class SchemaStart {

	private static final Set<MigrationState> NEWER = Set.of(MigrationState.FUTURE_SUCCESS,
			MigrationState.FUTURE_FAILED);

	private static final Set<MigrationState> OTHER = Set.of(MigrationState.MISSING_SUCCESS,
			MigrationState.MISSING_FAILED, MigrationState.IGNORED, MigrationState.FAILED);

	/**
	 * Whether the role owns the tables or stands above policies, and whether it may work.
	 */
	private static final String RIGHTS = """
			select rolsuper or rolbypassrls or pg_has_role(c.relowner, 'member') as free,
				has_table_privilege(c.oid, 'select') and has_table_privilege(c.oid, 'insert') as able
			from pg_roles r, pg_class c
			where r.rolname = current_user and c.oid = 'public.morning_entry'::regclass""";

	@Bean
	FlywayMigrationStrategy migrations(DataSource application) {
		return (flyway) -> {
			requireOurs(flyway.info().all());
			flyway.migrate();
			requireBound(application);
		};
	}

	static void requireOurs(MigrationInfo[] migrations) {
		Arrays.stream(migrations)
			.filter((one) -> NEWER.contains(one.getState()))
			.reduce((earlier, later) -> later)
			.ifPresent((newest) -> refuse("start.schema-newer", newest));
		Arrays.stream(migrations)
			.filter((one) -> OTHER.contains(one.getState()) || !one.isChecksumMatching())
			.findFirst()
			.ifPresent((first) -> refuse("start.schema-changed", first));
	}

	private static void refuse(String code, MigrationInfo migration) {
		throw new StartFailure(code, String.valueOf(migration.getVersion()));
	}

	private static void requireBound(DataSource application) {
		try (Connection connection = application.getConnection();
				Statement statement = connection.createStatement();
				ResultSet rights = statement.executeQuery(RIGHTS)) {
			rights.next();
			if (rights.getBoolean("free")) {
				throw new StartFailure("start.role-too-powerful", connection.getMetaData().getUserName());
			}
			if (!rights.getBoolean("able")) {
				throw new StartFailure("start.role-too-weak", connection.getMetaData().getUserName());
			}
		}
		catch (SQLException ex) {
			throw new IllegalStateException("The rights of the application's role cannot be asked for", ex);
		}
	}

}
