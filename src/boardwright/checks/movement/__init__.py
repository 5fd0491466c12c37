"""Wood that moves: each fit through the year, what is held so that it cannot move, and what opens or stands proud."""
