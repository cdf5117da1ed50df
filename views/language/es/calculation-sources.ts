import type { Catalogue } from '../patterns.ts';

/** Sources of the calculations, and what of them was read. */
export const calculationSources = {
  '1/4, 1/2, 3/4 and 7/8 in fine threads read, the others from memory; area formulas read.':
    '1/4, 1/2, 3/4 y 7/8 en rosca fina leídas, las demás de memoria; fórmulas de las áreas leídas.',
  '3.6, 3.8, 20.5 and 21 mA from memory.': '3,6, 3,8, 20,5 y 21 mA de memoria.',
  '4-20 mA, 20-100 kPa and 3-15 psi read in public texts; clause numbers from memory.':
    '4-20 mA, 20-100 kPa y 3-15 psi leídos en textos públicos; números de apartado de memoria.',
  '4.7 standard ml/min for each inch of orifice at 50 psi, not read.':
    '4,7 ml/min normales por cada pulgada de orificio a 50 psi, no leído.',
  'ANSI/FCI 70-2 (2003 on): class V with air': 'ANSI/FCI 70-2 (desde 2003): clase V con aire',
  'ANSI/FCI 70-2: control valve seat leakage': 'ANSI/FCI 70-2: fuga por el asiento de válvulas de control',
  'ASME B1.1: unified inch screw threads': 'ASME B1.1: roscas unificadas en pulgadas',
  'ASME B40.100: pressure gauges': 'ASME B40.100: manómetros',
  'ASME PCC-1-2013: guidelines for pressure boundary bolted flange joint assembly':
    'ASME PCC-1-2013: guía para el montaje de uniones embridadas atornilladas a presión',
  'ASME PCC-2-2008, article 5.1, appendix II: stored energy of a pressure test':
    'ASME PCC-2-2008, artículo 5.1, apéndice II: energía acumulada en una prueba de presión',
  'ASME PVS2017-3518: friction of valve stem packing':
    'ASME PVS2017-3518: fricción de la empaquetadura del vástago',
  'Balance and the inputs of its example read (vacuum side, where the sign is the other way round).':
    'Balance y datos de su ejemplo leídos (lado de vacío, donde el signo es el contrario).',
  'Chinese verification rule for general pressure gauges':
    'Regla china de verificación de manómetros generales',
  'Class figures read in public pages; the list of classes from memory.':
    'Cifras de las clases leídas en páginas públicas; la lista de clases de memoria.',
  'Class fractions, class V, class VI, IV-S2 and the interpolation note read in a public reproduction; the power of ten of IV-S1 and the simplified gas form from memory.':
    'Fracciones de las clases, clase V, clase VI, IV-S2 y la nota de interpolación leídas en una reproducción pública; la potencia de diez de IV-S1 y la forma simplificada para gas de memoria.',
  'Class table, US class V form and class VI table to 8 in read in public reproductions; larger ports from a sister standard.':
    'Tabla de clases, forma US de la clase V y tabla de la clase VI hasta 8 in leídas en reproducciones públicas; puertos mayores de una norma hermana.',
  'Critical pressures checked against an open library and a tutorial of an orifice maker.':
    'Presiones críticas comparadas con una biblioteca abierta y con un curso de un fabricante de orificios.',
  'Data and certified values read in public test suites that carry them.':
    'Datos y valores certificados leídos en juegos de prueba públicos que los contienen.',
  'Divisors of the usual distributions, combination, coverage factor.':
    'Divisores de las distribuciones usuales, combinación, factor de cobertura.',
  'EN 837-1: pressure gauges': 'EN 837-1: manómetros',
  'Entries read; area, friction and seat loads recovered by fitting all legible entries, which they reproduce to the last digit.':
    'Valores leídos; área, fricción y cargas de asiento recuperadas ajustando todos los valores legibles, que reproducen hasta la última cifra.',
  'Equal percentage as R to the power (lift minus 1); a real trim follows within its own tolerance.':
    'Igual porcentaje como R elevado a (apertura menos 1); un internal real lo sigue dentro de su propia tolerancia.',
  'Equations and constants read; later editions number the article 501, and one reproduction doubles the explosive in the distance.':
    'Ecuaciones y constantes leídas; ediciones posteriores numeran el artículo 501, y una reproducción duplica el explosivo en la distancia.',
  'Equations and marked constants read in open library code; worked examples 1, 2 and 4 reproduced; the other constants checked by conversion of units.':
    'Ecuaciones y constantes marcadas leídas en código de bibliotecas abiertas; ejemplos resueltos 1, 2 y 4 reproducidos; las demás constantes comprobadas por conversión de unidades.',
  'Factors follow from the exact definitions of inch, pound and standard gravity; water columns at a temperature have the printed digits only.':
    'Los factores se siguen de las definiciones exactas de pulgada, libra y gravedad normal; las columnas de agua a una temperatura tienen solo las cifras impresas.',
  'Fieller 1954: interval of a ratio, for where a fitted line meets a value':
    'Fieller 1954: intervalo de un cociente, para dónde una recta ajustada llega a un valor',
  'Flow at the scale state goes with the root of the gas density.':
    'El caudal en el estado de la escala va con la raíz de la densidad del gas.',
  'Flow law from memory, widely published; density of air at ANR 1.185 kg/m³ with 65 % humidity.':
    'Ley de caudal de memoria, muy publicada; densidad del aire en ANR 1,185 kg/m³ con 65 % de humedad.',
  'Formula and stresses read; inch-pounds.': 'Fórmula y esfuerzos leídos; pulgada-libras.',
  'Formula from memory; its coverage is tried on made series.':
    'Fórmula de memoria; su cobertura se prueba con series simuladas.',
  'Formula read.': 'Fórmula leída.',
  'From memory; the order of size of the gap agrees with a public instrumentation note.':
    'De memoria; el orden de magnitud de la separación coincide con una nota pública de instrumentación.',
  'Grades 4A to A read in public pages; B, C and D from memory.':
    'Grados 4A a A leídos en páginas públicas; B, C y D de memoria.',
  'Guarded acceptance and the ball-bearing example read through an open library; inputs of clause 7 from memory.':
    'Aceptación con guarda y el ejemplo del rodamiento leídos por una biblioteca abierta; datos del apartado 7 de memoria.',
  'Hooke and pressure times area; signs checked against published allowable shut-off tables.':
    'Hooke y presión por área; signos comparados con tablas publicadas de caídas admisibles de cierre.',
  'IEC 60381-1 and IEC 60382: analogue current and pneumatic signals':
    'IEC 60381-1 e IEC 60382: señales analógicas de corriente y neumáticas',
  'IEC 60534-2-1:2011 and ISA-75.01.01: flow capacity of control valves':
    'IEC 60534-2-1:2011 e ISA-75.01.01: capacidad de caudal de válvulas de control',
  'IEC 60534-2-4: inherent flow characteristics and rangeability':
    'IEC 60534-2-4: características inherentes de caudal y rangeabilidad',
  'IEC 60534-4 and GB/T 4213-92: inspection and routine testing of control valves':
    'IEC 60534-4 y GB/T 4213-92: inspección y pruebas de rutina de válvulas de control',
  'ILAC-G24 / OIML D 10: intervals of calibration, control chart method':
    'ILAC-G24 / OIML D 10: intervalos de calibración, método de la carta de control',
  'Instrument error below a quarter of the limit, basic error and rated-travel deviation read in public test notes.':
    'Error del instrumento menor que un cuarto del límite, error básico y desviación de la carrera nominal leídos en notas públicas de ensayo.',
  'ISA-51.1 and IEC 61298-2: performance terms and their tests':
    'ISA-51.1 e IEC 61298-2: términos de desempeño y sus pruebas',
  'ISA-75.25.01 and IEC 60534-9: step response of control valves':
    'ISA-75.25.01 e IEC 60534-9: respuesta al escalón de válvulas de control',
  'Isentropic flow of an ideal gas through a nozzle': 'Flujo isentrópico de un gas ideal por una tobera',
  'ISO 6358: flow rate characteristics of pneumatic components':
    'ISO 6358: características de caudal de componentes neumáticos',
  'JCGM 100:2008: guide to the expression of uncertainty in measurement':
    'JCGM 100:2008: guía para la expresión de la incertidumbre de medida',
  'JCGM 106:2012: the role of measurement uncertainty in conformity assessment':
    'JCGM 106:2012: el papel de la incertidumbre de medida en la evaluación de la conformidad',
  'List of terms and order of tests read; wording of the definitions from memory.':
    'Lista de términos y orden de las pruebas leídos; redacción de las definiciones de memoria.',
  'Multipliers of the tolerance by root sum of squares, one U, RP-10 and managed 2 % read there.':
    'Multiplicadores de la tolerancia por raíz de la suma de cuadrados, una U, RP-10 y 2 % controlado leídos allí.',
  'NAMUR NE 43: signal levels for a failed transmitter':
    'NAMUR NE 43: niveles de señal de un transmisor averiado',
  'NIST Special Publication 811, appendix B: conversion factors':
    'NIST Special Publication 811, apéndice B: factores de conversión',
  'NIST Statistical Reference Datasets: linear regression, data set Norris':
    'NIST Statistical Reference Datasets: regresión lineal, serie de datos Norris',
  'Not read; about twice the figures of S-13.': 'No leído; alrededor del doble de las cifras de S-13.',
  'Nozzle and flapper, incompressible textbook form': 'Tobera y paleta, forma incompresible de libro',
  'One-page gland torque method of a packing maker, 1996':
    'Método de una página de un fabricante de empaquetaduras para el par del prensaestopas, 1996',
  'Seat loads of a control-valve handbook family':
    'Cargas de asiento de una familia de manuales de válvulas de control',
  'Seating of the plug by turns of its stem': 'Asentar el obturador con vueltas de su vástago',
  'Static force balance of a spring and diaphragm actuator with constant effective area':
    'Equilibrio estático de fuerzas de un actuador de resorte y diafragma de área efectiva constante',
  'Stem size, packing and pressure class read; at standard gland torque.':
    'Tamaño del vástago, empaquetadura y clase de presión leídos; con el par normal del prensaestopas.',
  'T = K D F is universal; the ranges of K are from memory.':
    'T = K D F es universal; los intervalos de K son de memoria.',
  'T63 and T86 counted from the input step, dead time included.':
    'T63 y T86 contados desde el escalón de entrada, tiempo muerto incluido.',
  'Table 1 read; percentages of the passes read in public procedures, the ranges of the legacy pattern from memory.':
    'Tabla 1 leída; porcentajes de las pasadas leídos en procedimientos públicos, los intervalos del patrón tradicional de memoria.',
  'Test rules for control valves in Chinese practice':
    'Reglas de ensayo de válvulas de control en la práctica china',
  'Test uncertainty ratio and guard bands, as an open library of a US national laboratory tests them':
    'Relación de incertidumbre de ensayo y bandas de guarda, como las prueba una biblioteca abierta de un laboratorio nacional de EE. UU.',
  'That the interval follows from the drift calculated is from memory; the cap by the length of the history is a rule of this code.':
    'Que el intervalo se siga de la deriva calculada es de memoria; el tope por la duración del historial es una regla de este código.',
  'The rule of direction is common practice, no source; the figures follow from S-06 and the thread.':
    'La regla del sentido es práctica común, sin fuente; las cifras se siguen de S-06 y de la rosca.',
  'Torque of a bolted joint by nut factor': 'Par de una unión atornillada por factor de tuerca',
  'Typical packing friction, one page of a valve reference manual':
    'Fricción típica de empaquetaduras, una página de un manual de consulta de válvulas',
  'US 40 CFR 1065.644: leak rate from a pressure decay':
    'US 40 CFR 1065.644: tasa de fuga a partir de una caída de presión',
  'Valve Sizing Reference Guide (2008), table 17: allowable pressure drops of unbalanced trim':
    'Guía de dimensionamiento de válvulas (2008), tabla 17: caídas de presión admisibles de internos no equilibrados',
  'Variable-area meter: balance of the weight and drag of its float':
    'Rotámetro: equilibrio entre el peso y el arrastre de su flotador',
  'Wider limit in the last tenth of the scale read.':
    'Límite más ancho en el último décimo de la escala, leído.',
} as const satisfies Catalogue;
