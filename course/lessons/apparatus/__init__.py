"""The apparatus of the lessons: one module each in ``kinds``; what they show is computed by ``pressure``."""
