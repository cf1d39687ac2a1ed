package org.fallow.illness;

import java.math.BigDecimal;
import java.math.RoundingMode;

import org.fallow.illness.core.DayAssessment;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

/**
 * The evidence of a day as text: members in the order of their names, decimals with six
 * places, so that equal evidence is equal bytes.
 */
final class EvidenceJson {

	private static final int PLACES = 6;

	private static final JsonMapper MAPPER = JsonMapper.builder()
		.enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
		.enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
		.disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
		.addModule(new SimpleModule().addSerializer(Double.class, new SixPlaces())
			.addSerializer(Double.TYPE, new SixPlaces()))
		.build();

	private EvidenceJson() {
	}

	static String write(DayAssessment day) {
		return MAPPER.writeValueAsString(day);
	}

	private static final class SixPlaces extends ValueSerializer<Double> {

		@Override
		public void serialize(@Nullable Double value, JsonGenerator json, SerializationContext context) {
			BigDecimal exact = BigDecimal.valueOf((value == null) ? 0 : value);
			json.writeNumber(exact.setScale(PLACES, RoundingMode.HALF_UP).toPlainString());
		}

	}

}
