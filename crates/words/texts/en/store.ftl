### Store

