### App

