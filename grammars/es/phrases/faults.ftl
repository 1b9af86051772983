# Cuando algo falló aquí, sea lo que sea.

went-wrong = Algo falló de mi lado. No cambió nada.
    .full = Algo falló de mi lado. No cambió nada. Puedes repetirlo o decirlo de otra manera.
went-wrong-again = Otra vez falló algo de mi lado. No cambió nada. Dejé lo que teníamos pendiente: dilo completo.
