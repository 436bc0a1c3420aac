### Physics

