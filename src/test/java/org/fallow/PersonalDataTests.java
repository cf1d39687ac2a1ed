package org.fallow;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.platform.DatabaseTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What modules say they keep about people, against the database's own catalogue: no table
 * that leads to a person is left out, and each that is named has policies.
 */
@DatabaseTest
class PersonalDataTests {

	/**
	 * Without policies: rules are no data of a person, and COPY into import_row refuses
	 * them.
	 */
	private static final Set<String> WITHOUT_POLICIES = Set.of("rule_set", "rule_draft", "import_row");

	@Autowired
	private List<PersonalData> modules;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void leavesNoTableOutThatLeadsToAPerson() {
		Set<String> leading = new TreeSet<>(Set.of("person"));
		for (boolean found = true; found;) {
			found = leading.addAll(this.jdbc.sql("""
					select distinct r.relname from pg_constraint k
					join pg_class r on r.oid = k.conrelid join pg_class t on t.oid = k.confrelid
					where k.contype = 'f' and r.relnamespace = 'public'::regnamespace and t.relname in (:tables)
						and t.relname not in ('rule_set', 'rule_draft')""")
				.param("tables", leading)
				.query(String.class)
				.list());
		}
		assertThat(names()).containsExactlyInAnyOrderElementsOf(leading);
	}

	@Test
	void namesAColumnThatSaysWhose() {
		for (PersonalTable table : tables()) {
			String target = (table.through() == null) ? "person" : table.through();
			Integer keys = this.jdbc.sql("""
					select count(*) from pg_attribute a join pg_class c on c.oid = a.attrelid
					where c.relname = :table and a.attname = :column and not a.attisdropped
						and (:table = 'person' or :target = 'import_job' or :table = 'morning_symptom'
							or exists (select 1 from pg_constraint k join pg_class t on t.oid = k.confrelid
							where k.conrelid = c.oid and k.contype = 'f' and t.relname = :target
								and a.attnum = any (k.conkey)))""")
				.param("table", table.name())
				.param("column", table.column())
				.param("target", target)
				.query(Integer.class)
				.single();
			assertThat(keys).as(table.toString()).isOne();
		}
	}

	@Test
	void guardsEachWithPolicies() {
		Set<String> guarded = new HashSet<>(this.jdbc
			.sql("select c.relname from pg_class c where c.relrowsecurity and exists (select 1 from pg_policy p where "
					+ "p.polrelid = c.oid)")
			.query(String.class)
			.list());
		List<String> open = new ArrayList<>(names());
		open.removeAll(guarded);
		assertThat(open).containsExactlyInAnyOrderElementsOf(WITHOUT_POLICIES);
	}

	/** Rows that point at others must go first, or an erasure would stop half-way. */
	@Test
	void namesWhatPointsBeforeWhatItPointsAt() {
		for (PersonalData module : this.modules) {
			List<String> order = module.tables().stream().map(PersonalTable::name).toList();
			this.jdbc.sql("""
					select r.relname || ' ' || t.relname from pg_constraint k
					join pg_class r on r.oid = k.conrelid join pg_class t on t.oid = k.confrelid
					where k.contype = 'f' and r.relname in (:tables) and t.relname in (:tables)
						and r.oid <> t.oid""").param("tables", order).query(String.class).list().forEach((pair) -> {
				String[] names = pair.split(" ");
				assertThat(order.indexOf(names[0])).as(pair).isLessThan(order.indexOf(names[1]));
			});
		}
	}

	private List<PersonalTable> tables() {
		return this.modules.stream().flatMap((module) -> module.tables().stream()).toList();
	}

	private List<String> names() {
		return tables().stream().map(PersonalTable::name).toList();
	}

}
