# El calendario de la casa: se lee, no se dice.

calendar-last-day = { CAP($item) }: último día según la guía.
calendar-where = { CAP($at) }.
calendar-source = Fuente: { $source }.
calendar-in-doubt = Ante la duda, a la basura.
calendar-name = { $household }, últimos días y recordatorios.
