package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.List;

/**
 * The 24 invented athletes of Tarnside Road Runners. No name is that of a known athlete.
 */
final class DemoCast {

	private static final String WINTER = "5 km winter block";

	private static final String SPRING = "Spring half-marathon";

	private DemoCast() {
	}

	static List<DemoAthlete> athletes() {
		return List.of(
				athlete("TR01", "Ailsa Brightwater", "1991-04-17", WINTER, "strap", "lying", 52, 1.8, 58, 0.14,
						"a cold now, on the short path"),
				athlete("TR02", "Tomasz Wielogorski", "1984-11-02", WINTER, "worn", "lying", 49, 1.6, 64, 0.13,
						"three-week return, now in Stage 1"),
				athlete("TR03", "Priyanka Dasgupta-Hale", "1996-07-29", WINTER, "strap", "lying", 56, 2.0, 47, 0.15,
						"three-week return, now in Stage 2"),
				athlete("TR04", "Owen Penhallow", "1979-01-23", WINTER, "worn", "lying", 54, 1.7, 39, 0.14,
						"three-week return, now in Stage 3"),
				athlete("TR05", "Yusra El-Tawansi", "1993-09-11", WINTER, "strap", "sitting", 61, 2.0, 42, 0.16,
						"fever in April, relapse in Stage 2, closed in June"),
				athlete("TR06", "Bastiaan Kortrijker", "1972-05-30", WINTER, "strap", "lying", 50, 1.8, 33, 0.15,
						"palpitations in March: hold, clinician's clearance, return"),
				athlete("TR07", "Nkechi Umeadi", "1988-12-08", WINTER, "worn", "lying", 57, 1.9, 51, 0.14,
						"chest pain now: on hold"),
				athlete("TR08", "Callum Strathdene", "1999-02-14", WINTER, "worn", "lying", 47, 1.6, 0, 0,
						"without heart-rate variability"),
				athlete("TR09", "Hana Kurosegawa", "1965-10-19", WINTER, "", "", 0, 0, 0, 0,
						"without any device: symptoms only"),
				athlete("TR10", "Giulia Montescuro", "1990-06-05", WINTER, "count60", "lying", 59, 2.0, 0, 0,
						"without any device: counts the pulse for 60 seconds"),
				athlete("TR11", "Ravindra Kottapalli", "1986-08-21", WINTER, "strap", "lying", 55, 1.9, 45, 0.16,
						"gone quiet"),
				athlete("TR12", "Freya Solbakkerud", "2001-03-03", WINTER, "strap", "lying", 46, 1.7, 82, 0.15,
						"changed device in April"),
				athlete("TR13", "Declan Moyrath", "1982-07-16", SPRING, "strap", "lying", 53, 1.8, 41, 0.14,
						"a bad strap day in May, noted unsure"),
				athlete("TR14", "Leilani Kahananui", "1994-01-27", SPRING, "worn", "lying", 51, 1.7, 69, 0.13,
						"calf injury in May and June"),
				athlete("TR15", "Mateo Villarzobal", "1989-05-09", SPRING, "worn", "lying", 50, 1.5, 56, 0.13,
						"pulse above the line now"),
				athlete("TR16", "Sunniva Tveitdal", "1997-11-13", SPRING, "strap", "lying", 48, 1.7, 74, 0.12,
						"heart-rate variability suppressed now"),
				athlete("TR17", "Kwabena Ofosuhene", "1985-03-26", SPRING, "strap", "lying", 54, 1.8, 49, 0.14,
						"above the neck now"),
				athlete("TR18", "Bronwen Llanfair", "2009-02-20", SPRING, "worn", "lying", 60, 2.0, 66, 0.15,
						"seventeen; a newcomer"),
				athlete("TR19", "Arash Golestani-Pour", "1976-09-04", SPRING, "strap", "lying", 51, 1.8, 36, 0.15,
						"a cold in February, a sneeze now"),
				athlete("TR20", "Zofia Brzezanska", "1992-12-30", SPRING, "strap", "lying", 55, 1.9, 53, 0.14,
						"stomach upset in March"),
				athlete("TR21", "Teuila Fa'amoe", "1987-04-06", SPRING, "worn", "lying", 58, 2.1, 44, 0.15,
						"healthy; holiday in May"),
				athlete("TR22", "Gideon Marchbanks", "1958-08-12", SPRING, "strap", "sitting", 57, 2.3, 24, 0.18,
						"healthy"),
				athlete("TR23", "Linh Dao-Carrow", "1998-10-01", SPRING, "worn", "lying", 49, 1.6, 77, 0.13, "healthy"),
				athlete("TR24", "Rosalind Thackery", "1970-06-24", SPRING, "count30", "lying", 56, 2.2, 0, 0,
						"healthy; counts the pulse for 30 seconds"));
	}

	private static DemoAthlete athlete(String code, String name, String birth, String group, String method,
			String posture, int rhr, double rhrSd, int rmssd, double lnSd, String story) {
		return new DemoAthlete(code, name, LocalDate.parse(birth), group, method, posture, rhr, rhrSd, rmssd, lnSd,
				story);
	}

}
