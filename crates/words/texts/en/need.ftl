### Need

