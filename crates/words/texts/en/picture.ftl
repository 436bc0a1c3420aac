### Picture


picture-style = Style
picture-style-crumb = invented figures
