import type { Catalogue } from '../patterns.ts';

/** Short formulas of the calculations, and one-word names of their figures. */
export const calculationFormulas = {
  '0.0005 ml/min for each inch of port and each psi': '0,0005 ml/min por cada pulgada de puerto y cada psi',
  '0.003 · drop in kPa · figure of the row; between rows by the diameter squared':
    '0,003 · caída en kPa · cifra de la fila; entre filas por el diámetro al cuadrado',
  '1.8 · 10⁻⁷ l/h for each mm of seat and each kPa': '1,8 · 10⁻⁷ l/h por cada mm de asiento y cada kPa',
  '4.7 ml/min standard for each inch of orifice': '4,7 ml/min normales por cada pulgada de orificio',
  'error = class · span/100': 'error = clase · intervalo/100',
  'friction = A · (up − down)/2': 'fricción = A · (subida − bajada)/2',
  'height = E/(m · g)': 'altura = E/(m · g)',
  'p = (thrust + friction ∓ spring)/area': 'p = (empuje + fricción ∓ resorte)/área',
  'p2 = ratio · (p1 + barometer) − barometer': 'p2 = relación · (p1 + barómetro) − barómetro',
  'percent = 100 · (actual − rated)/rated': 'porcentaje = 100 · (real − nominal)/nominal',
  'percent = 100 · step/span': 'porcentaje = 100 · escalón/intervalo',
  'probability = Φ((upper − value)/u) − Φ((lower − value)/u)':
    'probabilidad = Φ((superior − valor)/u) − Φ((inferior − valor)/u)',
  'q = reading · √(p/p(scale) · T(scale)/T)': 'q = lectura · √(p/p(escala) · T(escala)/T)',
  'shift = k · turns · pitch/A': 'desplazamiento = k · vueltas · paso/A',
  'speed = travel/time': 'velocidad = carrera/tiempo',
  'turns = shift · A/(k · pitch)': 'vueltas = desplazamiento · A/(k · paso)',
  'U² = (100 · U(signal)/span)² + (100 · U(travel)/stroke)²':
    'U² = (100 · U(señal)/intervalo)² + (100 · U(carrera)/recorrido)²',
  'u² = (accuracy · span/100)²/3 + resolution²/12; U = 2 u':
    'u² = (exactitud · intervalo/100)²/3 + resolución²/12; U = 2 u',
  'wait = 3 · step · V/(n · R · T)': 'espera = 3 · división · V/(n · R · T)',
  Characteristic: 'Característica',
  Diameter: 'Diámetro',
  Direction: 'Sentido',
  From: 'Desde',
  Grade: 'Grado',
  Method: 'Método',
  Percent: 'Porcentaje',
  Rangeability: 'Rangeabilidad',
  Ratio: 'Relación',
  Standard: 'Norma',
  Value: 'Valor',
} as const satisfies Catalogue;
