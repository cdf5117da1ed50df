import type { Catalogue } from '../patterns.ts';

/** Equations of the calculations: their symbols stay, their words are said. */
export const calculationEquations = {
  'air to close: contact = high + (F + Ff)/A, load = A · (supply − high) − F − Ff; air to open: first lift = low + (Ff − F)/A, load = A · low − F − Ff':
    'aire para cerrar: contacto = alto + (F + Ff)/A, carga = A · (alimentación − alto) − F − Ff; aire para abrir: primera apertura = bajo + (Ff − F)/A, carga = A · bajo − F − Ff',
  'air to close: high + (F + Ff + need)/A; air to open: the larger of first lift and full opening':
    'aire para cerrar: alto + (F + Ff + necesaria)/A; aire para abrir: la mayor entre primera apertura y apertura completa',
  'below half the inlet pressure 4.73 Kv √(Δp · Pm/(G · T)), from there 2.9 P1 · Kv/√(G · T); kPa and m³/h':
    'por debajo de la mitad de la presión de entrada 4,73 Kv √(Δp · Pm/(G · T)), desde ahí 2,9 P1 · Kv/√(G · T); kPa y m³/h',
  'bench end = installed end − plug force/A at the shut end':
    'extremo del banco = extremo instalado − fuerza del obturador/A en el extremo cerrado',
  'C = choked mass flow/(1.185 kg/m³ · p1) at 20 °C':
    'C = caudal másico en flujo crítico/(1,185 kg/m³ · p1) a 20 °C',
  'C = Q/(N1 · FP · √(Δp/(ρ/ρ0))), solved together with FP':
    'C = Q/(N1 · FP · √(Δp/(ρ/ρ0))), resuelta junto con FP',
  'C = Qs/(N9 · FP · P1 · Y · √(x/(M · T1 · Z))), solved together with FP and xTP':
    'C = Qs/(N9 · FP · P1 · Y · √(x/(M · T1 · Z))), resuelta junto con FP y xTP',
  'converted = value · factor(from)/factor(to), with the shift of °C and °F':
    'convertido = valor · factor(de)/factor(a), con el desplazamiento de °C y °F',
  'dead band = 100 · |last − first|/span; hysteresis = hysteretic error − slope · dead band':
    'banda muerta = 100 · |último − primero|/intervalo; histéresis = error de histéresis − pendiente · banda muerta',
  'drop = (load without process − need · π · d)/(π/4 · d²)':
    'caída = (carga sin proceso − necesaria · π · d)/(π/4 · d²)',
  'E = k · x²/2 from the free length': 'E = k · x²/2 desde la longitud libre',
  'error = output − what the actual input asks; hysteresis and dead band = largest |down − up| within a cycle; linearity by the smallest largest deviation':
    'error = salida − lo que pide la entrada real; histéresis y banda muerta = mayor |bajada − subida| dentro de un ciclo; linealidad por la menor desviación máxima',
  'error = percent of the grade · span/100': 'error = porcentaje del grado · intervalo/100',
  'error = percent of the part of the scale · span/100':
    'error = porcentaje de la parte de la escala · intervalo/100',
  'error = travel − what the actual signal asks, both in percent; linearity by the smallest largest deviation':
    'error = carrera − lo que pide la señal real, ambas en porcentaje; linealidad por la menor desviación máxima',
  'F = p(upper) · A(upper) − p(lower) · A(lower) + spring, less friction':
    'F = p(superior) · A(superior) − p(inferior) · A(inferior) + resorte, menos fricción',
  'F = π/4 · (bore² − stem²) · stress; T = K · F · bolt diameter/bolts':
    'F = π/4 · (caja² − vástago²) · esfuerzo; T = K · F · diámetro del perno/pernos',
  'force = p(port side) · port area − p(stem side) · (port area − stem area); balanced: port side · (balance − stem) − other side · (balance − port)':
    'fuerza = p(lado del puerto) · área del puerto − p(lado del vástago) · (área del puerto − área del vástago); equilibrado: lado del puerto · (equilibrio − vástago) − otro lado · (equilibrio − puerto)',
  'friction = A · (up − down)/2 at one travel; the middle (up + down)/2 against the bench set gives the shift':
    'fricción = A · (subida − bajada)/2 a una misma carrera; el medio (subida + bajada)/2 frente al ajuste de banco da el desplazamiento',
  'inside: |value| + U at most the limit; outside: |value| − U above it; else too close':
    'dentro: |valor| + U como mucho el límite; fuera: |valor| − U por encima; si no, demasiado justo',
  'isentropic: p V/(k − 1) · (1 − (pa/p)^((k − 1)/k)); constant volume: (p − pa) V/(k − 1); isothermal: p V ln(p/pa); isothermal availability: p V (ln(p/pa) − 1 + pa/p)':
    'isentrópica: p V/(k − 1) · (1 − (pa/p)^((k − 1)/k)); volumen constante: (p − pa) V/(k − 1); isotérmica: p V ln(p/pa); disponibilidad isotérmica: p V (ln(p/pa) − 1 + pa/p)',
  'k = A · (high − low)/travel; preload = A · low': 'k = A · (alto − bajo)/carrera; precarga = A · bajo',
  'linear: x; equal percentage: R^(x − 1)': 'lineal: x; igual porcentaje: R^(x − 1)',
  'load = figure of the table · π · port diameter': 'carga = cifra de la tabla · π · diámetro del puerto',
  'load for each length = (before + gain)/(π · port diameter)':
    'carga por cada longitud = (antes + ganancia)/(π · diámetro del puerto)',
  'm = Cd · A · p1 · √(2k/((k − 1) R T) · (r^(2/k) − r^((k + 1)/k))), r at least the critical ratio':
    'm = Cd · A · p1 · √(2k/((k − 1) R T) · (r^(2/k) − r^((k + 1)/k))), r al menos la relación crítica',
  'margin = seat load − need · π · port diameter':
    'margen = carga de asiento − necesaria · π · diámetro del puerto',
  'n = (V/R) · (p1/T1 − p2/T2)/Δt, absolute pressures and temperatures':
    'n = (V/R) · (p1/T1 − p2/T2)/Δt, presiones y temperaturas absolutas',
  'net = air + spring + plug force; the stem moves where the net passes the friction':
    'neta = aire + resorte + fuerza del obturador; el vástago se mueve donde la neta supera la fricción',
  'normal, k = 2': 'normal, k = 2',
  'opposite bolts in turn, then the pair square to them; the next four as far off as can be':
    'pernos opuestos por turno, después la pareja perpendicular; los cuatro siguientes lo más lejos posible',
  'out = out low + (in − in low)/(in high − in low) · (out high − out low)':
    'salida = salida baja + (entrada − entrada baja)/(entrada alta − entrada baja) · (salida alta − salida baja)',
  'percent = 100 · (signal − low)/(high − low) of each valve’s own part':
    'porcentaje = 100 · (señal − bajo)/(alto − bajo) de la parte propia de cada válvula',
  'percent = 100 · (signal − low)/(high − low), from 100 down if reverse':
    'porcentaje = 100 · (señal − bajo)/(alto − bajo), desde 100 hacia abajo si es inversa',
  'percent = 100 · (signal − low)/(high − low); travel = open · rated travel':
    'porcentaje = 100 · (señal − bajo)/(alto − bajo); carrera = abierta · carrera nominal',
  'pitch = 1 in/threads; As = π/4 · (D − 0.9743 p)²; root = D − 1.29904 p':
    'paso = 1 in/hilos; As = π/4 · (D − 0,9743 p)²; núcleo = D − 1,29904 p',
  'Q = 0.1 · Kv · √(Δp in kPa/relative density), m³/h; limit = fraction of the class · Q':
    'Q = 0,1 · Kv · √(Δp en kPa/densidad relativa), m³/h; límite = fracción de la clase · Q',
  'q = bubbles · π/6 · d³; as a gas n = q · p/(R · T) at the state of the room':
    'q = burbujas · π/6 · d³; como gas n = q · p/(R · T) en el estado de la sala',
  'Q = C · N1 · FP · √(Δp/(ρ/ρ0)), Δp at most (FLP/FP)² · (P1 − FF · Pv); FF = 0.96 − 0.28 √(Pv/Pc)':
    'Q = C · N1 · FP · √(Δp/(ρ/ρ0)), Δp como mucho (FLP/FP)² · (P1 − FF · Pv); FF = 0.96 − 0.28 √(Pv/Pc)',
  'q = C · p1 · √(T0/T1) below b, times √(1 − ((r − b)/(1 − b))²) above it':
    'q = C · p1 · √(T0/T1) por debajo de b, por √(1 − ((r − b)/(1 − b))²) por encima',
  'q = volume/time; as a gas n = q · p/(R · T) at the state of the room':
    'q = volumen/tiempo; como gas n = q · p/(R · T) en el estado de la sala',
  'Qs = C · N9 · FP · P1 · Y · √(x/(M · T1 · Z)); Y = 1 − x/(3 Fγ xTP), x at most Fγ · xTP':
    'Qs = C · N9 · FP · P1 · Y · √(x/(M · T1 · Z)); Y = 1 − x/(3 Fγ xTP), x como mucho Fγ · xTP',
  'Qs = C · N9 · P1 · Y · √(x/(M · T1 · Z)), x at most Fγ · xT; limit = fraction of the class · Qs':
    'Qs = C · N9 · P1 · Y · √(x/(M · T1 · Z)), x como mucho Fγ · xT; límite = fracción de la clase · Qs',
  'ratio = half width of the tolerance/permitted error':
    'relación = media anchura de la tolerancia/error permitido',
  'ratio = half width of the tolerance/U': 'relación = media anchura de la tolerancia/U',
  'read from the table': 'leído de la tabla',
  'read from the table named; nothing is interpolated': 'leído de la tabla nombrada; no se interpola nada',
  'root sum of squares: √(1 − 1/ratio²); one U: 1 − 1/ratio; RP-10: 1.25 − 1/ratio; managed 2 %: 1 − (1.04 − e^(0.38 ln ratio − 0.54))/ratio; 1 at most':
    'raíz de la suma de cuadrados: √(1 − 1/relación²); una U: 1 − 1/relación; RP-10: 1,25 − 1/relación; 2 % controlado: 1 − (1,04 − e^(0,38 ln relación − 0,54))/relación; 1 como mucho',
  'share of the final torque in each pass': 'parte del par final en cada pasada',
  'shift = turns · pitch; gain = k · shift; signal shift = gain/A':
    'desplazamiento = vueltas · paso; ganancia = k · desplazamiento; desplazamiento de señal = ganancia/A',
  'shift of the shut end = plug force/A': 'desplazamiento del extremo cerrado = fuerza del obturador/A',
  'signal = low + percent/100 · (high − low), from high down if reverse':
    'señal = bajo + porcentaje/100 · (alto − bajo), desde alto hacia abajo si es inversa',
  'T63 = dead time + τ; T86 = dead time + 2 τ': 'T63 = tiempo muerto + τ; T86 = tiempo muerto + 2 τ',
  'the prior times the chance of each reading, summed over what is accepted and over what is not':
    'la probabilidad previa por la de cada lectura, sumada sobre lo que se acepta y sobre lo que no',
  'the row of the port; between rows by the diameter squared; no factor for the drop':
    'la fila del puerto; entre filas por el diámetro al cuadrado; sin factor por la caída',
  'thread left = thread that grips − turns · pitch where the stem is screwed out':
    'rosca que queda = rosca que agarra − vueltas · paso donde el vástago se desenrosca',
  'time at which the travel passes 63.2 % and 86.5 % of the step, counted from the input step; overshoot = 100 · (peak − final)/(final − initial)':
    'momento en que la carrera pasa el 63,2 % y el 86,5 % del escalón, contado desde el escalón de entrada; sobrepaso = 100 · (pico − final)/(final − inicial)',
  'travel counts from the open end; the seat stops the stem where the lift lost begins':
    'la carrera cuenta desde el extremo abierto; el asiento para el vástago donde empieza la apertura perdida',
  'turns = (need · π · d − load before)/(k · pitch), never below 0':
    'vueltas = (necesaria · π · d − carga antes)/(k · paso), nunca menos de 0',
  'U at k = 2. Not the ratio of two accuracies. {1}': 'U con k = 2. No el cociente de dos exactitudes. {1}',
  'U at k = 2. The rule that was used is named with the verdict.':
    'U con k = 2. La regla usada se nombra con el veredicto.',
  'what the restriction feeds leaves through the curtain π · dn · x':
    'lo que alimenta la restricción sale por la cortina π · dn · x',
  'zero = line at the low end − ideal; span = 100 · slope of the line − 100':
    'cero = recta en el extremo bajo − ideal; intervalo = 100 · pendiente de la recta − 100',
} as const satisfies Catalogue;
