import type { Catalogue } from '../patterns.ts';

/** Photos of a job: taking one, what is not taken and why, and where they stand in the record. */
export const photos = {
  'Behind the picture stand {1} bytes of something else.': 'Detrás de la imagen hay {1} bytes de otra cosa.',
  'Choose or take one, then send it.': 'Elija o tome una y envíela.',
  'Findings, parts and photos': 'Hallazgos, piezas y fotos',
  'Give the file a plain name, or take the photo anew.':
    'Dé al archivo un nombre sencillo o tome la foto de nuevo.',
  'JPEG, PNG or WebP, at most 10 MiB. Place, time, owner and whatever else the camera wrote into it are taken out. It stays in the log for good: no faces, no papers that are private.':
    'JPEG, PNG o WebP, 10 MiB como máximo. Se quitan el lugar, la hora, el dueño y todo lo demás que la cámara escribió en ella. Queda en la bitácora para siempre: nada de rostros ni de papeles privados.',
  'Keep the photo': 'Guardar la foto',
  'Line {1}, {2}, {3}. {4}, {5} by {6} pixels, {7} bytes, SHA-256 {8}':
    'Línea {1}, {2}, {3}. {4}, {5} por {6} píxeles, {7} bytes, SHA-256 {8}',
  'No photo came with the form.': 'Con el formulario no llegó ninguna foto.',
  'Not printed: see the page of this record.': 'No se imprime: véase la página de este registro.',
  'Note a finding, a part or a photo': 'Anotar un hallazgo, una pieza o una foto',
  'Nothing was recorded.': 'No se registró nada.',
  'Of line {1}': 'De la línea {1}',
  'Of line {1}.': 'De la línea {1}.',
  'Open the picture and save it once more, or take the photo anew.':
    'Abra la imagen y guárdela otra vez, o tome la foto de nuevo.',
  Photo: 'Foto',
  'Photo of line {1}, without words': 'Foto de la línea {1}, sin palabras',
  Photos: 'Fotos',
  'Save one plain picture of it.': 'Guarde de ello una imagen sencilla.',
  'Take a photo': 'Tomar una foto',
  'Take it with fewer pixels, or save it smaller.': 'Tómela con menos píxeles o guárdela más pequeña.',
  'Take the photo anew, or open and save it once more.':
    'Tome la foto de nuevo, o ábrala y guárdela otra vez.',
  'Take the photo with the camera, or save the picture as JPEG.':
    'Tome la foto con la cámara o guarde la imagen como JPEG.',
  'The name of the file holds a path or characters that cannot be seen.':
    'El nombre del archivo contiene una ruta o caracteres que no se ven.',
  'The photo is larger than {1} MiB.': 'La foto ocupa más de {1} MiB.',
  'The picture cannot be read: {1}.': 'La imagen no se puede leer: {1}.',
  'The picture has {1} by {2} pixels; at most {3} million are taken, and {4} along a side.':
    'La imagen tiene {1} por {2} píxeles; se aceptan {3} millones como máximo, y {4} por lado.',
  'This is no JPEG, PNG or WebP picture, whatever its name says.':
    'Esto no es una imagen JPEG, PNG ni WebP, diga lo que diga su nombre.',
  'This is {1}, which is not taken.': 'Esto es {1}, y no se acepta.',
  'What is to be seen, for whoever cannot see it. At most 400 letters.':
    'Qué se ve, para quien no puede verla. 400 letras como máximo.',
  'What it shows': 'Qué muestra',
  'a JPEG of a seldom coding': 'un JPEG de codificación poco común',
  'a marker is missing in it': 'le falta una marca',
  'a moving picture': 'una imagen en movimiento',
  'a part of it has no length': 'una parte no tiene longitud',
  'a part of it has no name': 'una parte no tiene nombre',
  'a row of it is filtered in an unknown way': 'una fila está filtrada de una manera desconocida',
  'a scan in it does not fit its frame': 'un barrido no corresponde a su cuadro',
  'a sum in it is wrong, at {1}': 'una suma es incorrecta, en {1}',
  'it cannot be unpacked': 'no se puede desempaquetar',
  'it does not begin as a PNG': 'no empieza como un PNG',
  'it does not begin as a WebP': 'no empieza como un WebP',
  'it does not hold one picture': 'no contiene una sola imagen',
  'it ends too early': 'termina demasiado pronto',
  'it has a part of a kind unknown here, {1}': 'tiene una parte de un tipo desconocido aquí, {1}',
  'it has a part that no picture has': 'tiene una parte que ninguna imagen tiene',
  'it has more than {1} scans': 'tiene más de {1} barridos',
  'it has no size': 'no tiene tamaño',
  'it has two frames': 'tiene dos cuadros',
  'it says two sizes': 'dice dos tamaños',
  'it unpacks to more than it says': 'al desempaquetarla da más de lo que dice',
  'its frame is not whole': 'su cuadro no está completo',
  'its head is not that of a PNG': 'su cabecera no es la de un PNG',
  'its palette is not right': 'su paleta no es correcta',
  'its picture is not in one piece': 'su imagen no está de una pieza',
  'its picture is not whole': 'su imagen no está completa',
  'most of the picture is missing': 'falta la mayor parte de la imagen',
  'rows of the picture are missing': 'faltan filas de la imagen',
  'something else stands among its rows': 'entre sus filas hay otra cosa',
  'the words': 'las palabras',
  'there is no picture in it': 'no contiene ninguna imagen',
  'what it shows': 'qué muestra',
  '{1} What you wrote stands in the form; choose the photo again.':
    '{1} Lo que escribió sigue en el formulario; elija la foto de nuevo.',
} as const satisfies Catalogue;
